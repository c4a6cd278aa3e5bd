"""Every page in every state it has, rendered: its HTML, its headers, its questions to the database."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from django.conf import settings
from django.db import connection, transaction
from django.template.loader import render_to_string
from django.test.utils import CaptureQueriesContext

from tests.browser.furnished import Rows, furnish, furnish_nothing
from tests.browser.pages import (
    EMPTY_CLUB,
    SAMPLES,
    clients,
    forms_without_sample,
    pages_without_sample,
)
from tests.browser.samples import Sample

pytestmark = pytest.mark.django_db

ALL = (*SAMPLES, *EMPTY_CLUB)
STATIC = Path(settings.BASE_DIR) / "static"
HTML_CHECKER = Path(
    os.environ.get("VNU_JAR") or Path(settings.BASE_DIR) / ".ci/node/node_modules/vnu-jar/build/dist/vnu.jar"
)
# What a page may load and do; all else is none. No inline script or style, no other host.
# Directives of Content Security Policy Level 3 (W3C).
CONTENT_POLICY = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self'",
    "font-src": "'self'",
    "connect-src": "'self'",
    "form-action": "'self'",
    "base-uri": "'none'",
    "frame-ancestors": "'none'",
}

HEADERS = {
    "Content-Type": "text/html; charset=utf-8",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
}


@dataclass(frozen=True)
class Answer:
    status: int
    html: str
    headers: dict[str, str]
    queries: int


def answers_of(samples: Iterable[Sample], rows: Rows) -> dict[str, Answer]:
    readers = clients(samples)
    return {sample.name: answer_of(sample, readers[sample.reader], rows) for sample in samples}


def answer_of(sample: Sample, client: Any, rows: Rows) -> Answer:
    """What the server answers; what it wrote is taken back."""
    with transaction.atomic():
        with CaptureQueriesContext(connection) as asked:
            answer = sample.answer(client, rows)
        transaction.set_rollback(True)
    return Answer(answer.status_code, answer.content.decode(), dict(answer.headers), len(asked))


@pytest.fixture(scope="module")
def answers(django_db_setup: None, django_db_blocker: Any) -> dict[str, Answer]:
    """Every sample's answer, by the sample's name."""
    found: dict[str, Answer] = {}
    with django_db_blocker.unblock():
        for samples, set_up in ((EMPTY_CLUB, furnish_nothing), (SAMPLES, furnish)):
            with transaction.atomic():
                found |= answers_of(samples, set_up())
                transaction.set_rollback(True)
    return found


def test_every_address_that_answers_a_get_has_a_sample():
    assert pages_without_sample() == set()


def test_every_form_has_a_sample_in_which_it_is_refused():
    assert forms_without_sample() == set()


def test_no_two_samples_share_a_name():
    names = [sample.name for sample in ALL]

    assert len(names) == len(set(names))


def test_a_page_is_in_the_state_its_sample_is_about(answers: dict[str, Answer]):
    states = {name: answer.status for name, answer in answers.items()}

    assert states == {sample.name: sample.status for sample in ALL}


def test_a_page_asks_the_database_no_more_than_its_sample_says(answers: dict[str, Answer]):
    asked = {sample.name: (answers[sample.name].queries, sample.queries) for sample in ALL}

    assert {name: counts for name, counts in asked.items() if counts[0] > counts[1]} == {}


def test_a_page_lets_in_nothing_but_our_own_files(answers: dict[str, Answer]):
    policies = {answer.headers["Content-Security-Policy"] for answer in answers.values()}

    found = [dict(line.strip().split(" ", 1) for line in policy.split(";")) for policy in policies]

    assert found == [CONTENT_POLICY]


@pytest.mark.parametrize(("header", "value"), HEADERS.items())
def test_a_page_tells_browsers_to_keep_it_safe(answers: dict[str, Answer], header: str, value: str):
    assert {name: answer.headers.get(header) for name, answer in answers.items()} == dict.fromkeys(
        answers, value
    )


def test_a_page_has_one_heading_of_its_own(answers: dict[str, Answer]):
    counts = {name: len(re.findall("<h1[ >]", answer.html)) for name, answer in answers.items()}

    assert counts == dict.fromkeys(answers, 1)


def test_a_page_is_told_apart_by_its_title(answers: dict[str, Answer]):
    title = re.compile(r"<title>\w[^<]+, \w[^<]*</title>")

    untitled = [name for name, answer in answers.items() if not title.search(answer.html)]

    assert untitled == []


def test_a_page_has_one_filled_action_at_most(answers: dict[str, Answer]):
    counts = {name: answer.html.count('class="do first"') for name, answer in answers.items()}

    assert {name: count for name, count in counts.items() if count > 1} == {}


def failing_pages() -> dict[str, str]:
    """The pages for what broke: nothing is known any more then, not even the club's name."""
    return {name: render_to_string(f"{name}.html") for name in ("400", "500")}


# CSS Generated Content for Paged Media (W3C working draft), which paper goes by and the checker doesn't know.
PAGED_MEDIA = re.compile(r"“(?:element|running)\([a-z]+\)” is not a “(?:content|position)” value")


def checked(files: list[Path]) -> list[str]:
    """What the HTML checker has to say about these files, in one run."""
    command = ["java", "-jar", str(HTML_CHECKER), "--also-check-css", "--also-check-svg"]
    command += ["--stdout", "--exit-zero-always", "--format", "json", *map(str, files)]
    run = subprocess.run(command, capture_output=True, text=True, check=True)
    return [
        f"{message.get('url', '').rpartition('/')[2]} line {message.get('lastLine')}: {message['message']}"
        for message in json.loads(run.stdout)["messages"]
        if not PAGED_MEDIA.search(message["message"])
    ]


@pytest.mark.skipif(shutil.which("java") is None, reason="The HTML checker needs Java, which is not here.")
@pytest.mark.skipif(not HTML_CHECKER.exists(), reason="The HTML checker is not here: set VNU_JAR to it.")
def test_the_html_checker_finds_nothing(answers: dict[str, Answer], tmp_path: Path):
    pages = {name: answer.html for name, answer in answers.items()} | failing_pages()
    for name, html in pages.items():
        (tmp_path / f"{name.replace(' ', '-')}.html").write_text(html)
    style = [*STATIC.rglob("*.css"), *STATIC.rglob("*.svg")]

    found = checked([*sorted(tmp_path.iterdir()), *style])

    assert not found, "\n".join(found)
