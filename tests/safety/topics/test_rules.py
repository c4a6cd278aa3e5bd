"""The rules of a handout against the reference: what fires them, how much hangs on them, who says so."""

from __future__ import annotations

import re
from dataclasses import fields
from typing import Any

import pytest

from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Fired, Place, Rule, Trigger, Word, fire
from safety.topics.tables import rules
from tests.safety.topics.reference import LISTS, REFERENCE, asked, words

BY_KEY = {rule.key: rule for rule in rules()}
# The one turn of phrase in which the word may stand.
NOT_SAFE = "does not make it safe"


def rule_of(row: dict[str, Any]) -> Rule:
    return BY_KEY[row["id"]]


def fired_by(rule: Rule, **used: tuple[str, ...]) -> tuple[Fired, ...]:
    return fire((rule,), Place.HANDOUT, words(**used))


def by_id(row: dict[str, Any]) -> str:
    return str(row["id"])


def test_every_rule_of_a_handout_is_there_once_and_no_other():
    assert sorted(rule.key for rule in rules()) == sorted(row["id"] for row in REFERENCE)
    assert len({str(rule.statement) for rule in rules()}) == len(REFERENCE)


@pytest.mark.parametrize("row", REFERENCE, ids=by_id)
def test_a_rule_is_as_severe_at_the_same_moment_and_said_at_the_same_places(row):
    rule = rule_of(row)

    assert (rule.severity, rule.moment) == (row["severity"], row["moment"])
    assert [place.value for place in rule.said_at] == row["said_at"]
    assert rule.confidence.value == row["confidence"]


@pytest.mark.parametrize("row", REFERENCE, ids=by_id)
def test_a_rule_hangs_on_the_same_words(row):
    trigger = rule_of(row).trigger

    assert {among: getattr(trigger, among) for among in LISTS if getattr(trigger, among)} == asked(row)
    assert [member.name for member in fields(Trigger)] == list(LISTS)


@pytest.mark.parametrize("row", REFERENCE, ids=by_id)
def test_one_word_of_each_list_fires_a_rule_and_is_said_to_be_why(row):
    lists = asked(row)
    for among, candidates in lists.items():
        for word in candidates:
            used = {**{other: every[:1] for other, every in lists.items()}, among: (word,)}

            (fired,) = fired_by(rule_of(row), **used)

            assert Word(among, word) in fired.because
            assert len(fired.because) == len(lists)


@pytest.mark.parametrize("row", REFERENCE, ids=by_id)
def test_a_rule_stays_silent_while_one_of_its_lists_finds_nothing(row):
    lists = asked(row)
    for among in lists:
        others = {other: every for other, every in lists.items() if other != among}

        assert fired_by(rule_of(row), **others) == ()
        assert fired_by(rule_of(row), **others, **{among: ("something else",)}) == ()


def test_a_rule_that_asks_for_nothing_is_always_said():
    always = Rule(
        "x",
        Severity.NOTE,
        Moment.TURNING,
        "Mind.",
        (Place.HANDOUT,),
        "",
        "",
        rules()[0].confidence,
        Trigger(),
    )

    assert fire((always,), Place.HANDOUT, words()) == (Fired(always, ()),)


def test_a_rule_is_not_said_at_a_place_it_doesnt_name():
    rule = BY_KEY["roughing-gouge-face"]

    assert fire((rule,), Place.BRIEFING, words(operations=("face_work",))) == ()
    assert fire((rule,), Place.HANDOUT, words(operations=("face_work",))) != ()


@pytest.mark.parametrize("rule", rules(), ids=lambda rule: rule.key)
def test_no_statement_says_that_anything_is_safe_and_each_names_who_says_so(rule):
    statement = str(rule.statement).replace(NOT_SAFE, "")

    assert not re.search(r"\b(un)?safe(ly|ty)?\b|harmless|no danger|no risk", statement, re.IGNORECASE)
    assert statement[0].isupper()
    assert statement.rstrip().endswith(".")
    assert str(rule.who_says)
    assert rule.source


@pytest.mark.parametrize("rule", rules(), ids=lambda rule: rule.key)
def test_limits_in_figures_and_law_stand_in_the_source_and_not_in_the_statement(rule):
    assert not re.search(r"mg/m|\bdB\b|CFR|directive", str(rule.statement))


def test_rules_stand_moment_by_moment():
    moments = [rule.moment for rule in rules()]

    assert moments == sorted(moments, key=list(Moment).index)
