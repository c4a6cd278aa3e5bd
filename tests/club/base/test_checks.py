from __future__ import annotations

import os
import subprocess
import sys

import pytest
from django.conf import settings as django_settings
from django.core.checks import run_checks

from club.base.checks import check_installation

GOOD_KEY = "".join(chr(ord("a") + number % 26) for number in range(50))


@pytest.fixture(autouse=True)
def all_good(settings):
    settings.ADDRESS = "https://turners.example"
    settings.CURRENCY = "EUR"
    settings.SECRET_KEY = GOOD_KEY


def ids() -> list[str | None]:
    return [problem.id for problem in check_installation()]


def test_a_good_installation_has_nothing_to_mend():
    assert ids() == []


@pytest.mark.parametrize(
    "address",
    [
        "",
        "http://localhost:8000",
        "https://turners.example:8443",
        "http://192.0.2.7",
        "http://[2001:db8::7]:8000",
    ],
)
def test_an_address_is_a_scheme_and_a_host_or_left_out(settings, address):
    settings.ADDRESS = address

    assert ids() == []


@pytest.mark.parametrize(
    "address",
    [
        *(
            "turners.example",
            "ftp://turners.example",
            "https://",
            "//turners.example",
            "https:turners.example",
        ),
        *("https://turners.example/club", "https://turners.example?club", "https://anna@turners.example"),
        *("https://[2001:db8::7", "http://turners.example:99999", "http://turners.example:0"),
        *("http://the club", "http://turners.example'"),
    ],
)
def test_any_other_address_is_told_with_two_examples(settings, address):
    settings.ADDRESS = address

    (problem,) = check_installation()

    assert problem.id == "club.E001"
    assert repr(address) in problem.msg
    assert "https://turners.example or http://192.0.2.7:8000" in str(problem.hint)


@pytest.mark.parametrize("name", ["Mars/Olympus", "", "../etc/passwd", "London"])
def test_an_unknown_time_zone_is_told_with_two_examples(monkeypatch, name):
    monkeypatch.setattr(django_settings, "TIME_ZONE", name)

    (problem,) = check_installation()

    assert problem.id == "club.E002"
    assert "Europe/London or America/Chicago" in str(problem.hint)


@pytest.mark.parametrize("code", ["XYZ", "eur", "", "Euro"])
def test_an_unknown_currency_is_told_with_three_examples(settings, code):
    settings.CURRENCY = code

    (problem,) = check_installation()

    assert problem.id == "club.E003"
    assert "EUR, GBP, USD" in str(problem.hint)


@pytest.mark.parametrize("key", ["hunter2", GOOD_KEY[:49], "abcd" * 20])
def test_a_key_that_is_easy_to_guess_is_told_without_showing_it(settings, key):
    settings.SECRET_KEY = key

    (problem,) = check_installation()

    assert problem.id == "club.E004"
    assert key not in f"{problem.msg} {problem.hint}"


def test_all_that_is_wrong_is_told_at_once(settings):
    settings.ADDRESS = "turners.example"
    settings.CURRENCY = "XYZ"

    assert ids() == ["club.E001", "club.E003"]


def test_every_command_checks_the_installation(settings):
    settings.CURRENCY = "XYZ"

    assert "club.E003" in [problem.id for problem in run_checks()]


def test_a_time_zone_that_does_not_exist_stops_the_start_with_a_sentence():
    environment = {**os.environ, "HANDWHEEL_TIME_ZONE": "Mars/Olympus"}

    done = subprocess.run(
        [sys.executable, django_settings.BASE_DIR / "manage.py", "check"],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 1
    assert "Mars/Olympus" in done.stderr
    assert "Traceback" not in done.stderr
