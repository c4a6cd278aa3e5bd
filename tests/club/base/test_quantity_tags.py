from __future__ import annotations

import pytest
from django.template import Context, Template

from club.base.quantities.length import Length, LengthStyle, parse_length


def written(template: str, **values: object) -> str:
    return Template(template).render(Context(values))


@pytest.mark.parametrize(
    ("style", "shown"),
    [
        (LengthStyle.AS_TYPED, "12.203\u00a0in"),
        (LengthStyle.SIXTEENTHS, "about 12\u00a03/16\u00a0in"),
        (LengthStyle.SIXTY_FOURTHS, "about 12\u00a013/64\u00a0in"),
        (LengthStyle.MILLIMETRES, "about 309.956\u00a0mm"),
        ("millimetres", "about 309.956\u00a0mm"),
    ],
)
def test_a_length_stands_as_the_reader_likes_it(style, shown):
    length = parse_length("12.203 in")

    assert written("{% length bar %}", bar=length, reader_lengths=style) == shown


def test_a_reader_who_chose_nothing_sees_what_was_typed():
    assert written("{% length bar %}", bar=parse_length("1/2 in")) == "1/2\u00a0in"


def test_a_length_can_be_put_into_a_sentence():
    template = "{% length bar as shown %}{% blocktranslate %}bore {{ shown }}{% endblocktranslate %}"

    assert written(template, bar=Length(10_000_000)) == "bore 10\u00a0mm"


def test_what_nobody_knows_is_nothing():
    assert written("{% length bar %}{{ rpm|thousands }}", bar=None, rpm=None) == ""


def test_typed_marks_come_out_harmless():
    assert written("{% length bar %}", bar=parse_length("1' 6\"")) == "1&#x27;\u00a06&quot;"


@pytest.mark.parametrize(
    ("rpm", "shown"), [(0, "0"), (450, "450"), (1450, "1\u00a0450"), (1_234_567, "1\u00a0234\u00a0567")]
)
def test_thousands_stand_apart_and_never_break(rpm, shown):
    assert written("{{ rpm|thousands }}", rpm=rpm) == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("hollow 3 1/8 in across", "hollow 3\u00a01/8\u00a0in across"),
        ("from 12 mm to 2 1/2 in", "from 12\u00a0mm to 2\u00a01/2\u00a0in"),
        ("at 3/16, 3/8 and 4 in", "at 3/16, 3/8 and 4\u00a0in"),
        ("step 3 inside, 2 more", "step 3 inside, 2 more"),
    ],
)
def test_a_measure_in_written_text_stays_on_one_line(text, shown):
    """A line that ends between `3` and `1/8 in` would be turned to an eighth of an inch."""
    assert written("{{ text|unbroken }}", text=text) == shown


def test_written_text_stays_harmless():
    assert written("{{ text|unbroken }}", text="<b>3 in</b>") == "&lt;b&gt;3\u00a0in&lt;/b&gt;"
