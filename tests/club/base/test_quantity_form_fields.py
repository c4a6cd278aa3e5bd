from __future__ import annotations

import pytest
from django import forms

from club.base.fields import LengthFormField, RpmFormField
from club.base.quantities.length import Length, parse_length


class BarForm(forms.Form):
    length = LengthFormField(example="14 1/4 in")
    bore = LengthFormField(required=False, zero=True)
    speed = RpmFormField(required=False)


def bar_form(**typed: str) -> BarForm:
    return BarForm({"length": "1 in", "bore": "", "speed": "", **typed})


def test_text_becomes_a_length_and_rpm():
    form = bar_form(length=" 2 3/4 in", bore="0 mm", speed="1\u00a0450")

    assert form.is_valid()
    assert form.cleaned_data == {"length": Length(69_850_000), "bore": Length(0), "speed": 1450}
    assert form.cleaned_data["length"].typed == "2 3/4 in"


def test_an_empty_field_that_may_be_empty_is_none():
    form = bar_form(bore=" ", speed="\u00a0")

    assert form.is_valid()
    assert form.cleaned_data["bore"] is None
    assert form.cleaned_data["speed"] is None


@pytest.mark.parametrize(
    ("field", "typed", "words"),
    [
        ("length", "", "Nothing stands here yet. Write the length as 14 1/4 in."),
        ("length", "0 in", "This can't be 0. Write the length as 14 1/4 in."),
        (
            "bore",
            "2 3/0 in",
            "A fraction can't have 0 under the line."
            " Write the length as 1/2\u00a0in, 0.5\u00a0in or 12.7\u00a0mm.",
        ),
        ("speed", "1.450", "“1.450” can be read in two ways. Write 1450."),
        (
            "speed",
            "20001",
            "This can't be more than 20\u00a0000\u00a0rpm. Write the speed as 450 or 1\u00a0450\u00a0rpm.",
        ),
    ],
)
def test_what_is_wrong_stays_typed_beside_one_sentence(field, typed, words):
    form = bar_form(**{field: typed})

    assert form.errors == {field: [words]}
    assert form[field].value() == typed


def test_html_that_was_typed_comes_back_harmless():
    form = bar_form(length='"><script>5</script>')

    assert "<script>" not in str(form["length"]) + str(form["length"].errors)


def test_a_form_shows_what_was_typed_once():
    form = BarForm(initial={"length": parse_length('2-3/4"'), "bore": Length(8_466_667), "speed": 1450})

    assert form["length"].value() == '2-3/4"'
    # Nobody typed it, so it stands there exactly, and not as it is shown.
    assert form["bore"].value() == "8.466667\u00a0mm"
    assert form["speed"].value() == "1\u00a0450"


def test_a_form_sent_back_untouched_has_changed_nothing():
    initial = {"length": parse_length("2 3/4 in"), "bore": None, "speed": 1450}
    untouched = {"length": "2 3/4 in", "bore": "", "speed": "1\u00a0450"}

    assert BarForm(untouched, initial=initial).changed_data == []
    assert BarForm({**untouched, "length": "69.85 mm"}, initial=initial).changed_data == ["length"]


def test_each_field_shows_how_to_write_it_unless_it_says_something_of_its_own():
    assert "15.75\u00a0in" in str(LengthFormField().help_text)
    assert "1\u00a0450" in str(RpmFormField().help_text)
    assert LengthFormField(help_text="Narrowest place.").help_text == "Narrowest place."


def test_the_text_field_is_short_and_cuts_nothing_off():
    assert "maxlength" not in str(BarForm()["length"])
    assert 'class="short"' in str(BarForm()["length"])
