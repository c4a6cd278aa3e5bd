from __future__ import annotations

from dataclasses import dataclass

import pytest
from django.contrib import messages
from django.contrib.auth.models import AnonymousUser
from django.contrib.messages.storage.cookie import CookieStorage
from django.contrib.sessions.backends.signed_cookies import SessionStore
from django.http import HttpRequest
from django.template import engines
from django.template.loader import render_to_string
from django.test import RequestFactory, override_settings
from django.urls import resolve, reverse
from django.utils import translation

from club.base.access import Grant, Role
from club.base.pages import LENGTH_WORDS, page_context
from club.base.quantities.length import LengthStyle


@dataclass
class Reader:
    """Somebody signed in, without a row in the database: a page asks for no more than this."""

    grants: tuple[Grant, ...] = (Grant(Role.COORDINATOR, None),)
    lengths: str = LengthStyle.AS_TYPED.value
    is_authenticated: bool = True
    is_active: bool = True

    def __str__(self) -> str:
        return "Ilse <Brandt>"


def asked(address: str = "home:start", reader: object | None = None) -> HttpRequest:
    request = RequestFactory().get(reverse(address))
    request.resolver_match = resolve(request.path)
    request.user = reader or AnonymousUser()  # type: ignore[assignment]
    request.session = SessionStore()
    request._messages = CookieStorage(request)  # type: ignore[attr-defined]
    return request


def page(request: HttpRequest, source: str = '{% extends "base.html" %}') -> str:
    return engines["django"].from_string(source).render({}, request)


def ways(request: HttpRequest) -> dict[str, str]:
    return {way.address: way.current for way in page_context(request)["ways"]}


def test_a_coordinator_is_offered_every_way():
    assert list(ways(asked(reader=Reader()))) == [
        "home:start",
        "classes:list",
        "projects:list",
        "lathes:list",
        "stores:list",
        "lathes:workshops",
        "people:list",
    ]


def test_a_reader_is_offered_only_the_ways_open_to_them():
    helper = Reader(grants=(Grant(Role.HELPER, 3),))

    offered = list(ways(asked(reader=helper)))
    assert offered == list(ways(asked(reader=Reader())))[:-1]
    assert "people:list" not in offered


def test_who_has_not_signed_in_is_offered_no_way():
    request = asked()

    assert ways(request) == {}
    assert 'class="ways"' not in page(request)


@pytest.mark.parametrize(
    ("address", "current"),
    [
        ("lathes:list", {"lathes:list": "page"}),
        ("lathes:new", {"lathes:list": "true"}),
        ("home:cards", {"lathes:list": "true"}),
        ("lathes:workshops", {"lathes:workshops": "page"}),
        ("lathes:workshop_new", {"lathes:workshops": "true"}),
        ("people:new", {"people:list": "true"}),
        ("people:me", {}),
        ("people:password", {}),
        ("stores:supplier_new", {"stores:list": "true"}),
        ("home:start", {"home:start": "page"}),
    ],
)
def test_the_rail_marks_where_one_is(address, current):
    found = ways(asked(address, Reader()))

    assert {way: mark for way, mark in found.items() if mark} == current


def test_the_page_one_is_on_is_marked_for_readers_too():
    html = page(asked("lathes:list", Reader()))

    assert f'<a href="{reverse("lathes:list")}" aria-current="page">Lathes</a>' in html


@pytest.mark.parametrize("style", LengthStyle)
def test_the_rail_names_the_reader_and_how_lengths_are_shown(style):
    html = page(asked(reader=Reader(lengths=style.value)))

    assert f"Ilse &lt;Brandt&gt;, {LENGTH_WORDS[style]}</a>" in html
    assert f'href="{reverse("people:me")}"' in html


def test_who_has_not_signed_in_reads_lengths_as_typed():
    assert page_context(asked())["reader_lengths"] is LengthStyle.AS_TYPED


def test_signing_out_is_a_post_and_signing_in_a_link():
    inside, outside = page(asked(reader=Reader())), page(asked())

    assert f'<form method="post" action="{reverse("people:sign_out")}">' in inside
    assert "csrfmiddlewaretoken" in inside
    assert reverse("people:sign_in") not in inside
    assert f'<a href="{reverse("people:sign_in")}">Sign in</a>' in outside


@override_settings(CLUB_NAME="Quernby <Turners>")
def test_the_club_stands_in_the_rail_and_in_the_title():
    html = page(asked(), '{% extends "base.html" %}{% block title %}Lathes{% endblock %}')

    assert "<title>Lathes, Quernby &lt;Turners&gt;</title>" in html
    assert "<span>Quernby &lt;Turners&gt;</span>" in html


@pytest.mark.parametrize("base", ["base.html", "pocket.html"])
def test_a_page_says_its_language_and_whose_word_comes_first(base):
    with translation.override("de"):
        html = page(asked(), f'{{% extends "{base}" %}}')

    assert '<html lang="de">' in html
    assert "The machine's manual, the instructor, local codes and licensed practice come first." in html


def test_a_pocket_page_carries_nothing_of_the_staff():
    html = page(asked("home:start", Reader()), '{% extends "pocket.html" %}')

    assert 'class="rail"' not in html
    assert "<script" not in html
    assert "Ilse" not in html


@pytest.mark.parametrize("debug", [True, False])
def test_every_script_is_a_file_of_ours(debug):
    with override_settings(DEBUG=debug):
        html = page(asked(reader=Reader()))

    scripts = html.count("<script")
    assert scripts >= 2
    assert html.count('<script src="/static/') == scripts
    assert html.count("></script>") == scripts


def test_htmx_keeps_to_the_content_policy_and_shows_forms_that_come_back():
    html = page(asked())

    for setting in (
        '"includeIndicatorStyles":false',
        '"allowEval":false',
        '"historyCacheSize":0',
        '{"code":"422","swap":true}',
    ):
        assert setting in html


@pytest.mark.parametrize(
    ("level", "kind", "word"),
    [
        (messages.SUCCESS, "done", "Done"),
        (messages.WARNING, "caution", "Caution"),
        (messages.ERROR, "caution", "Caution"),
        (messages.INFO, "note", "Note"),
    ],
)
@pytest.mark.parametrize("base", ["base.html", "pocket.html"])
def test_a_message_has_its_mark_and_its_word(base, level, kind, word):
    request = asked()
    messages.add_message(request, level, "Lathe <5> is kept.")

    html = page(request, f'{{% extends "{base}" %}}')

    said = html[html.index('id="messages" role="status"') : html.index("<main")]
    assert f'<div class="care {kind}"><svg' in said
    assert f'<b class="word">{word}</b>Lathe &lt;5&gt; is kept.' in said


def test_a_page_for_a_fault_stands_without_anything_known():
    # Django draws it with an empty context, because what broke may be what fills it.
    html = render_to_string("pocket.html")

    assert "<title></title>" in html
    assert "<span>Handwheel</span>" in html


def test_a_request_nobody_has_looked_at_yet_is_offered_no_way():
    # As the page for an error that comes before sessions and sign-in.
    request = RequestFactory().get("/nowhere/")

    assert list(page_context(request)["ways"]) == []
    assert page_context(request)["address"] == ""


def test_a_fragment_works_out_no_ways(monkeypatch):
    def refuse(*args: object) -> bool:
        raise AssertionError("a fragment asked what its reader may open")

    monkeypatch.setattr("club.base.pages.may", refuse)

    assert "licensed practice" in render_to_string("look/_foot.html", {}, asked(reader=Reader()))
