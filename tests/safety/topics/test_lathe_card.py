from __future__ import annotations

import itertools
import re

import pytest

from safety.topics.lathe_card import LINES, Severity, lines_for

EVERY_MACHINE = [
    frozenset({release, *extras})
    for release in ("no_volt_release", "no_release_known")
    for count in range(3)
    for extras in itertools.combinations(("reverse", "draw_bars"), count)
]


@pytest.mark.parametrize("machine", EVERY_MACHINE)
def test_no_card_has_more_than_nine_stop_lines_and_none_twice(machine):
    lines = lines_for(machine)

    assert 0 < sum(line.severity is Severity.STOP for line in lines) <= 9
    assert len({str(line.statement) for line in lines}) == len(lines)


@pytest.mark.parametrize("machine", EVERY_MACHINE)
def test_each_card_says_what_to_do_when_the_power_goes(machine):
    assert sum(str(line.moment) == "Power gone" for line in lines_for(machine)) == 1


@pytest.mark.parametrize("line", [line for line in LINES if line.when], ids=lambda line: line.key)
def test_a_line_about_a_part_is_said_only_where_the_part_is(line):
    assert line in lines_for(frozenset({line.when}))
    assert line not in lines_for(frozenset())


@pytest.mark.parametrize("line", LINES, ids=lambda line: line.key)
def test_a_line_names_who_says_so_and_never_calls_anything_safe(line):
    assert line.source
    assert not re.search(r"\bsafe(ly)?\b", str(line.statement), re.IGNORECASE)


def test_stop_lines_come_before_cautions_and_moments_stay_together():
    severities = [line.severity for line in LINES]
    moments = [moment for moment, _ in itertools.groupby(str(line.moment) for line in LINES)]

    assert severities == sorted(severities, key=[Severity.STOP, Severity.CAUTION].index)
    assert len(moments) == len(set(moments))
