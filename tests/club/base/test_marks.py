from __future__ import annotations

import pytest
from django.template import Context, Template

from club.templatetags.marks import INK, SHAPES, WORDS


def drawn(source: str, **context: object) -> str:
    return Template(source).render(Context(context))


@pytest.mark.parametrize("kind", SHAPES)
def test_a_mark_on_screen_is_hidden_from_readers_and_takes_the_colour_around_it(kind):
    svg = drawn("{% mark kind %}", kind=kind)

    assert 'aria-hidden="true"' in svg
    assert "currentColor" in svg
    assert "<title>" not in svg


@pytest.mark.parametrize("kind", SHAPES)
def test_a_mark_on_paper_has_words_and_is_ink(kind):
    svg = drawn("{% mark kind %}", kind=kind, paper="a4")

    assert f"<title>{WORDS[kind]}</title>" in svg
    assert f'color="{INK}"' in svg
    assert "aria-hidden" not in svg


def test_a_mark_in_ink_takes_no_colour_from_around_it():
    assert 'class="mark ink"' in drawn('{% mark "stop" "ink" %}')


def test_no_two_marks_but_the_two_crosses_look_alike():
    shapes = {kind: shape for kind, shape in SHAPES.items() if kind != "wrong"}

    assert len(set(shapes.values())) == len(shapes)
    assert SHAPES["wrong"] == SHAPES["stop"]


def test_a_mark_nobody_drew_is_refused():
    with pytest.raises(KeyError):
        drawn('{% mark "sparkle" %}')


def test_a_state_is_its_mark_and_its_word():
    html = drawn('{% state "ready" words %}', words="in <service>")

    assert html.startswith('<span class="state ready"><svg class="mark"')
    assert html.endswith("</svg>in &lt;service&gt;</span>")


def test_a_tally_shows_its_number_and_nothing_typed_gets_through_as_html():
    assert drawn("{% tally 5 %}") == '<span class="tally">5</span>'
    assert drawn("{% tally number %}", number="<b>") == '<span class="tally">&lt;b&gt;</span>'


def test_the_diameter_sign_is_drawn_has_words_and_keeps_to_its_number():
    html = drawn("{% dia %}34")

    assert "<title>diameter</title>" in html
    assert html.endswith("</svg>\N{NO-BREAK SPACE}34")
