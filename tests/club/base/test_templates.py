"""What holds for every template, whoever wrote it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
from django.conf import settings
from django.template.base import Lexer, TokenType
from django.template.loader import get_template

ROOT = Path(settings.BASE_DIR)
NAMES = sorted(str(path.relative_to(ROOT / "templates")) for path in (ROOT / "templates").rglob("*.html"))
SERVED = sorted(
    path
    for folder in ("templates", "static")
    for path in (ROOT / folder).rglob("*")
    if path.suffix in {".html", ".css", ".js"}
)
# Attributes that are read out or shown.
SPOKEN = {"alt", "aria-label", "aria-description", "data-head", "placeholder", "title"}
# Our own name is the same in every language.
UNTRANSLATED = {"Handwheel"}


def markup(source: str) -> str:
    """A template without its tags, its variables, what is marked for translation and names of classes."""
    kept, inside = [], False
    for token in Lexer(source).tokenize():
        if token.token_type is TokenType.BLOCK and token.contents.startswith(
            ("blocktrans", "block body_class")
        ):
            inside = True
        elif token.token_type is TokenType.BLOCK and token.contents.startswith("endblock"):
            inside = False
        elif token.token_type is TokenType.TEXT and not inside:
            kept.append(token.contents)
    return "".join(kept)


class Reading(HTMLParser):
    """Gathers what people read, and each element with its attributes."""

    def __init__(self, source: str) -> None:
        super().__init__()
        self.sentences: list[str] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.feed(markup(source))
        self.close()

    def handle_data(self, data: str) -> None:
        self.sentences.append(data.strip())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        self.sentences.extend(value or "" for name, value in attrs if name in SPOKEN)


def unmarked(source: str) -> list[str]:
    """Sentences for people that no translator would ever see."""
    said = Reading(source).sentences
    return [words for words in said if re.search(r"[^\W\d_]", words) and words not in UNTRANSLATED]


def inline(source: str) -> Iterator[str]:
    """What the content security policy would stop."""
    for tag, attributes in Reading(source).elements:
        yield from (f"{tag} {name}" for name in attributes if name == "style" or name.startswith("on"))
        if tag == "style" or (tag == "script" and "src" not in attributes):
            yield tag
        yield from (
            f"{tag} {name}" for name, value in attributes.items() if (value or "").startswith("javascript:")
        )
        yield from (f"{tag} {name}" for name in attributes if name.startswith("hx-"))


def read(name: str) -> str:
    return (ROOT / "templates" / name).read_text()


@pytest.mark.parametrize("name", NAMES)
def test_a_template_compiles(name):
    get_template(name)


@pytest.mark.parametrize("name", NAMES)
def test_a_template_marks_every_sentence_for_translation(name):
    assert unmarked(read(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_a_template_holds_no_script_no_style_and_no_handler(name):
    assert list(inline(read(name))) == []


@pytest.mark.parametrize("path", SERVED, ids=lambda path: path.name)
def test_nothing_that_is_served_names_an_outside_address(path):
    assert re.findall(r"""(?:https?:|["'(\s=])//[\w.]+""", path.read_text()) == []


def style_for(name: str) -> str:
    """All style sheets that pages like this one link: those of paper, or those of the screen."""
    alike = [other for other in NAMES if other.startswith("print/") == name.startswith("print/")]
    linked = {sheet for other in alike for sheet in re.findall(r"css/\w+\.css", read(other))}
    return "".join((ROOT / "static" / sheet).read_text() for sheet in sorted(linked))


@pytest.mark.parametrize("name", NAMES)
def test_every_class_a_template_names_has_a_style(name):
    classes = [attributes.get("class") or "" for _, attributes in Reading(read(name)).elements]
    named = {word for words in classes for word in words.split()}
    style = style_for(name)

    assert {word for word in named if not re.search(rf"\.{word}(?![\w-])", style)} == set()


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ("<p>Save</p>", ["Save"]),
        ('<p aria-label="Lathes">{% translate "Save" %}</p>', ["Lathes"]),
        ("{% blocktranslate trimmed %}Save {{ it }}{% endblocktranslate %}", []),
        ("<b>{{ number }}, 12 · 3</b>", []),
        ('<a class="do{% if x %} first{% endif %}">{{ y }}</a>', []),
        ("{% block body_class %}cards{% endblock %}", []),
        ("{% block main %}<p>Save</p>{% endblock main %}", ["Save"]),
        ("<td data-head='bore'>{{ y }}</td>", ["bore"]),
    ],
)
def test_a_sentence_is_known_by_its_letters_outside_translation(source, found):
    assert unmarked(source) == found


@pytest.mark.parametrize(
    "source",
    [
        '<p style="color: red">',
        '<a onclick="x()">',
        "<style>p {}</style>",
        "<script>x()</script>",
        '<a href="javascript:x()">',
        '<a hx-get="/">',
    ],
)
def test_inline_script_and_style_are_found(source):
    assert list(inline(source))
