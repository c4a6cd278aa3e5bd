"""A form's page sent back as it came: what a browser would post, read from the HTML."""

from __future__ import annotations

from html import unescape
from html.parser import HTMLParser
from typing import Any
from urllib.parse import urlencode

from django import forms
from django.http import QueryDict
from django.test import Client
from django.urls import reverse


class _Fields(HTMLParser):
    """Every value that a browser sends of inputs, selects and text areas."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.sent: dict[str, list[str]] = {}
        self.select = ""
        self.first: str | None = None
        self.area = ""

    def handle_starttag(self, tag, attrs):
        have = {name: value or "" for name, value in attrs}
        if tag == "input" and have.get("name"):
            is_box = have.get("type") in {"checkbox", "radio"}
            if not is_box or "checked" in have:
                self._send(have["name"], have.get("value", "on" if is_box else ""))
        elif tag == "select":
            self.select, self.first = have["name"], None
        elif tag == "option" and self.select:
            self.first = have.get("value", "") if self.first is None else self.first
            if "selected" in have:
                self._send(self.select, have.get("value", ""))
        elif tag == "textarea":
            self.area = have["name"]
            self._send(self.area, "")

    def handle_endtag(self, tag):
        if tag == "select":
            if self.select not in self.sent and self.first is not None:
                self._send(self.select, self.first)
            self.select = ""
        elif tag == "textarea":
            # HTML leaves out the line end that follows the opening tag.
            text = self.sent[self.area][-1].removeprefix("\r").removeprefix("\n")
            self.sent[self.area][-1] = text
            self.area = ""

    def handle_data(self, data):
        if self.area:
            self.sent[self.area][-1] += data

    def _send(self, name: str, value: str) -> None:
        self.sent.setdefault(name, []).append(value)


def sent_by(html: str) -> dict[str, list[str]]:
    fields = _Fields()
    fields.feed(html)
    fields.close()
    return fields.sent


def sent_by_form(form: forms.BaseForm) -> dict[str, list[str]]:
    """What this form would send if nobody touched it."""
    return sent_by("".join(str(form[name]) for name in form.fields))


def address(name: str, key: str = "drawer-knob", **query: str) -> str:
    way = reverse(f"projects:{name}", args=[key])
    return f"{way}?{urlencode(query)}" if query else way


def text_of(answer: Any) -> str:
    """The page as people read it, its characters spelled out."""
    return unescape(answer.content.decode())


def filled(client: Client, way: str, **changes: object) -> dict[str, object]:
    """What the page's form sends, with these fields changed."""
    page = client.get(way)
    assert page.status_code == 200
    return {**sent_by(text_of(page)), **changes}


def posted(fields: dict[str, Any]) -> QueryDict:
    data = QueryDict(mutable=True)
    for name, values in fields.items():
        data.setlist(name, values if isinstance(values, list) else [values])
    return data
