"""Every word in a drawing stands clear of every other word, of every line and of the edge."""

from __future__ import annotations

from typing import Any

import pytest
from django.test import Client
from django.urls import reverse

from club.base.access import Role
from club.base.quantities.length import LengthStyle, parse_length
from club.lathes.models import Lathe
from tests.factories import LatheFactory, WorkshopFactory

pytestmark = pytest.mark.django_db(transaction=True)

WIDTHS = (1280, 360)
MEASURES = ("nose_to_handwheel", "swing_over_bed", "swing_over_banjo", "centres_greatest", "centres_least")
# Middling, tiny, huge, long and low, short and high, in mixed units, with some or all measures missing.
TWELVE = (
    ("15 3/4 in", "12 in", "9 in", "36 in", "8 in"),
    ("7 1/2 in", "6 in", "4 1/4 in", "8 in", "1 3/4 in"),
    ("1350 mm", "1600 mm", "1250 mm", "3 m", "250 mm"),
    ("20 1/64 in", "24 in", "18 63/64 in", "120 in", "11 29/32 in"),
    ("305 mm", "10 in", "190 mm", "15 in", "2 1/2 in"),
    ("18 in", "32 in", "28 in", "20 in", "9 in"),
    (None, "16 in", None, "48 in", None),
    ("14 in", None, "8 in", None, None),
    ("14 in", "12 in", "12 in", "36 in", "36 in"),
    (None, None, None, None, "4 in"),
    ("1' 4 1/2\"", "305.5 mm", "22.86 cm", "3 ft", "3 15/16 in"),
    (None, None, None, None, None),
)

# Of the drawings that show: words on words, over the edge, on a line; the least lettering in px; page width.
COLLISIONS = """
() => {
  const found = [], sizes = [];
  const number = (thing, name) => parseFloat(thing.getAttribute(name));
  const ink = text => {
    const box = text.getBBox(), size = number(text, 'font-size'), y = number(text, 'y');
    return {l: box.x, r: box.x + box.width, t: y - 0.7 * size, b: y + 0.22 * size, words: text.textContent};
  };
  const meets = (a, b) => a.l < b.r && b.l < a.r && a.t < b.b && b.t < a.b;
  const within = (a, b) => a.l >= b.l && a.r <= b.r && a.t >= b.t && a.b <= b.b;
  const cuts = ([x1, y1, x2, y2], box) => {          // Liang and Barsky
    let low = 0, high = 1;
    const dx = x2 - x1, dy = y2 - y1;
    for (const [p, q] of [[-dx, x1 - box.l], [dx, box.r - x1], [-dy, y1 - box.t], [dy, box.b - y1]]) {
      if (p === 0) { if (q < 0) return false; continue; }
      if (p < 0) low = Math.max(low, q / p); else high = Math.min(high, q / p);
    }
    return low <= high;
  };
  const chain = points => points.slice(1).map((point, i) => [...points[i], ...point]);
  const segments = run => {
    const numbers = run.match(/-?[0-9.]+/g).map(Number);
    if (run.includes('A')) {                          // a circle, by its four chords
      const r = numbers[2], x = numbers[0] + r, y = numbers[1];
      return chain([[x - r, y], [x, y - r], [x + r, y], [x, y + r], [x - r, y]]);
    }
    const points = [];
    while (numbers.length) points.push(numbers.splice(0, 2));
    return chain(run.endsWith('Z') ? [...points, points[0]] : points);
  };
  const lines = svg => [...svg.querySelectorAll('path:not(.blank)')]
    .flatMap(path => path.getAttribute('d').split('M').slice(1).flatMap(segments));
  for (const svg of document.querySelectorAll('svg.drawing')) {
    if (!svg.getClientRects().length) continue;
    const view = svg.viewBox.baseVal, scale = svg.getBoundingClientRect().width / view.width;
    const sheet = {l: view.x, t: view.y, r: view.x + view.width, b: view.y + view.height};
    const texts = [...svg.querySelectorAll('text')], boxes = texts.map(ink), drawn = lines(svg);
    sizes.push(...texts.map(text => number(text, 'font-size') * scale));
    boxes.forEach((box, i) => {
      if (!within(box, sheet)) found.push(box.words + ' over the edge');
      if (drawn.some(line => cuts(line, box))) found.push(box.words + ' on a line');
      boxes.slice(i + 1).filter(other => meets(box, other))
        .forEach(other => found.push(box.words + ' on ' + other.words));
    });
  }
  return {found, least: Math.min(99, ...sizes), wide: document.documentElement.scrollWidth};
}
"""


@pytest.fixture
def twelve_lathes(db: None) -> list[Lathe]:
    workshop = WorkshopFactory()
    return [
        LatheFactory(
            workshop=workshop,
            number=number,
            **{
                name: parse_length(text)
                for name, text in zip(MEASURES, texts, strict=True)
                if text is not None
            },
        )
        for number, texts in enumerate(TWELVE, start=1)
    ]


@pytest.fixture
def signed_in_page(page: Any, live_server: Any, account_of: Any) -> Any:
    """A browser page in which a coordinator is signed in; `lengths` may be changed on the account."""
    account = account_of(Role.COORDINATOR)
    client = Client()
    client.force_login(account)
    cookie = client.cookies["sessionid"].value
    page.context.add_cookies([{"name": "sessionid", "value": cookie, "url": live_server.url}])
    page.account = account
    return page


def seen_in(page: Any, width: int) -> dict[str, Any]:
    page.set_viewport_size({"width": width, "height": 800})
    page.evaluate("document.fonts.ready")
    found: dict[str, Any] = page.evaluate(COLLISIONS)
    return found


# 960 px is where the wide drawings give way to the narrow ones.
@pytest.mark.parametrize("width", [*WIDTHS, 960, 961])
def test_words_on_the_page_where_to_measure_stand_clear(page: Any, live_server: Any, width: int):
    page.goto(live_server.url + reverse("lathes:measuring"))

    seen = seen_in(page, width)

    assert seen["found"] == []
    assert seen["least"] >= 13
    assert seen["wide"] <= width


@pytest.mark.parametrize("style", [LengthStyle.AS_TYPED, LengthStyle.SIXTY_FOURTHS, LengthStyle.MILLIMETRES])
def test_words_in_a_lathes_side_view_stand_clear(
    signed_in_page: Any, live_server: Any, twelve_lathes: list[Lathe], style: LengthStyle
):
    signed_in_page.account.lengths = style.value
    signed_in_page.account.save(update_fields=["lengths"])

    for lathe in twelve_lathes:
        signed_in_page.goto(live_server.url + lathe.get_absolute_url())
        for width in WIDTHS:
            seen = seen_in(signed_in_page, width)
            assert seen["found"] == [], (lathe, width)
            assert seen["least"] >= 13, (lathe, width)


def test_every_lathe_of_the_list_shows_as_many_millimetres_to_a_pixel(
    signed_in_page: Any, live_server: Any, twelve_lathes: list[Lathe]
):
    signed_in_page.goto(live_server.url + reverse("lathes:list"))
    for width in WIDTHS:
        signed_in_page.set_viewport_size({"width": width, "height": 800})
        scales = signed_in_page.evaluate(
            "[...document.querySelectorAll('svg.small')]"
            ".map(svg => svg.viewBox.baseVal.width / svg.getBoundingClientRect().width)"
        )

        assert len(scales) == len(twelve_lathes)
        assert max(scales) - min(scales) < 0.01 * min(scales)


def test_a_line_keeps_its_width_on_screen_whatever_the_scale(page: Any, live_server: Any):
    page.goto(live_server.url + reverse("lathes:measuring"))

    widths = page.evaluate(
        "[...document.querySelectorAll('svg.drawing path.heavy')]"
        ".map(path => getComputedStyle(path).strokeWidth)"
    )

    assert set(widths) == {"2px"}
