"""How a form is drawn: its labels, its help, what is wrong with it, and what was typed."""

from __future__ import annotations

from html.parser import HTMLParser
from typing import Any

import pytest
from django import forms
from django.template.loader import render_to_string
from django.utils.html import format_html


class BoreForm(forms.Form):
    bore = forms.CharField(
        label="through bore", help_text="As 1/2 in.", widget=forms.TextInput(attrs={"class": "short"})
    )
    notes = forms.CharField(required=False, widget=forms.Textarea)
    taper = forms.ChoiceField(required=False, choices=[("", "not known"), ("2", "Morse No. 2")])
    condition = forms.ChoiceField(
        choices=[("in", "in service"), ("out", "out of service")], widget=forms.RadioSelect
    )
    guards = forms.MultipleChoiceField(
        required=False,
        choices=[("a", "a guard"), ("b", "a brake")],
        widget=forms.CheckboxSelectMultiple,
        help_text="All it has.",
    )
    seen = forms.BooleanField(label="I have seen it", help_text="With your own eyes.")
    list_file = forms.FileField(required=False)
    password = forms.CharField(widget=forms.PasswordInput)
    lowest = forms.CharField(required=False, disabled=True)
    revision = forms.IntegerField(widget=forms.HiddenInput)

    def clean_bore(self) -> str:
        raise forms.ValidationError("Write the bore as <1/2 in>.")

    def clean(self) -> None:
        raise forms.ValidationError("Somebody mended it while you were writing.")


WRONG = {
    "bore": '1/0 "in"',
    "notes": "a < b",
    "taper": "2",
    "condition": "up",
    "guards": ["b"],
    "revision": "x",
}


class Elements(HTMLParser):
    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))

    def of(self, *tags: str) -> list[dict[str, str | None]]:
        return [attributes for tag, attributes in self.found if tag in tags]


def drawn(name: str, data: dict[str, Any] | None = None, form: type[forms.Form] = BoreForm) -> str:
    return form(data)[name].as_field_group()


def the_input(html: str) -> dict[str, str | None]:
    return Elements(html).of("input", "select", "textarea")[0]


@pytest.mark.parametrize("name", ["bore", "notes", "taper", "seen", "list_file", "password"])
def test_a_label_belongs_to_its_input(name):
    html = drawn(name)

    assert Elements(html).of("label")[0]["for"] == the_input(html)["id"]


@pytest.mark.parametrize("name", ["bore", "guards", "seen"])
def test_help_comes_before_what_it_helps_with(name):
    html = drawn(name)

    assert 0 < html.index('class="help"') < html.index("<input")


def test_a_right_field_is_described_by_its_help():
    html = drawn("bore")

    assert the_input(html)["aria-describedby"] == "id_bore_helptext"
    assert 'id="id_bore_helptext"' in html
    assert "aria-invalid" not in html
    assert "wrong" not in html


def test_a_wrong_field_is_described_by_its_help_and_by_what_is_wrong():
    html = drawn("bore", WRONG)

    assert the_input(html)["aria-describedby"] == "id_bore_helptext id_bore_error"
    assert the_input(html)["aria-invalid"] == "true"
    assert '<div class="field wrong">' in html
    assert '<div id="id_bore_error">\n<p class="why"><svg class="mark"' in html
    assert "<span>Write the bore as &lt;1/2 in&gt;.</span>" in html


@pytest.mark.parametrize("name", ["condition", "guards"])
def test_a_group_is_a_fieldset_with_a_legend_and_its_help(name):
    html = drawn(name, WRONG | {"guards": ["z"]})
    fieldset = Elements(html).of("fieldset")[0]

    assert f"<legend>{name.capitalize()}" in html
    assert f"id_{name}_error" in (fieldset["aria-describedby"] or "")
    assert all("aria-invalid" not in one for one in Elements(html).of("input"))


def test_a_group_of_rings_is_marked_wrong_as_a_whole_and_a_group_of_ticks_cannot_be():
    rings, ticks = drawn("condition", WRONG), drawn("guards", WRONG | {"guards": ["z"]})

    assert Elements(rings).of("fieldset")[0] == {
        "aria-describedby": "id_condition_error",
        "role": "radiogroup",
        "aria-required": "true",
        "aria-invalid": "true",
    }
    assert "role" not in Elements(ticks).of("fieldset")[0]


def test_every_choice_of_a_group_has_its_own_label():
    elements = Elements(drawn("condition"))

    assert [label["for"] for label in elements.of("label")] == ["id_condition_0", "id_condition_1"]
    assert all(label["class"] == "pick" for label in elements.of("label"))


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("bore", False),
        ("notes", True),
        ("guards", True),
        ("list_file", True),
        ("taper", False),
        ("condition", False),
        ("seen", False),
        ("lowest", False),
    ],
)
def test_only_what_may_be_left_empty_says_so(name, said):
    assert ("may be left empty" in drawn(name)) is said
    assert "*" not in drawn(name)


def test_the_browser_keeps_its_own_words_to_itself():
    html = str(BoreForm())

    assert all(
        "required" not in one and "autofocus" not in one
        for one in Elements(html).of("input", "select", "textarea")
    )
    assert the_input(drawn("bore"))["aria-required"] == "true"
    assert "aria-required" not in the_input(drawn("notes"))


def test_what_was_typed_stays():
    html = str(BoreForm(WRONG))

    assert 'value="1/0 &quot;in&quot;"' in html
    assert ">\na &lt; b</textarea>" in html
    assert '<option value="2" selected>' in html
    assert {"name": "guards", "value": "b", "checked": None}.items() <= Elements(html).of("input")[4].items()


def test_a_password_never_comes_back():
    assert "bead cove" not in str(BoreForm(WRONG | {"password": "bead cove"}))


def not_saved(form: forms.Form, **context: Any) -> str:
    return render_to_string("look/_not_saved.html", {"form": form, **context})


def test_a_form_without_faults_shows_no_message_on_top():
    assert not_saved(BoreForm()).strip() == ""


def test_the_message_on_top_leads_to_each_wrong_field():
    html = not_saved(BoreForm(WRONG))

    links = [link["href"] for link in Elements(html).of("a")]
    assert 'role="alert"' in html
    assert links == ["#id_bore", "#id_condition_0", "#id_seen", "#id_password"]
    inputs = {f"#{one['id']}" for one in Elements(str(BoreForm(WRONG))).of("input", "select", "textarea")}
    assert set(links) <= inputs


def test_the_message_on_top_says_what_belongs_to_no_field_and_what_is_wrong_out_of_sight():
    html = not_saved(BoreForm(WRONG))

    assert '<b class="word">Not saved</b>Somebody mended it while you were writing.' in html
    assert "<p>Enter a whole number.</p>" in html


def test_the_message_on_top_says_what_has_to_be_given_again():
    html = not_saved(BoreForm(WRONG))

    assert "What you typed is still here." in html
    assert "To be given once more: List file, Password." in html


def test_a_page_may_name_what_failed_in_its_own_words():
    assert '<b class="word">Not signed in</b>' in not_saved(BoreForm(WRONG), word="Not signed in")


def test_help_with_a_link_stays_a_link_and_text_stays_text():
    class LinkedForm(forms.Form):
        a = forms.CharField(help_text=format_html('<a href="{}">where</a>', "/x/"))
        b = forms.CharField(help_text="<script>")

    assert '<a href="/x/">where</a></p>' in drawn("a", form=LinkedForm)
    assert "&lt;script&gt;" in drawn("b", form=LinkedForm)


def test_a_form_drawn_whole_is_the_message_the_fields_and_what_is_hidden():
    html = str(BoreForm(WRONG))

    assert html.index("Not saved") < html.index('id="id_bore"') < html.index('name="revision"')
    assert html.count('class="field') == 9
