from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given

from club.base.quantities.length import Length, LengthStyle
from projects.library.domain import checks
from projects.library.domain.findings import Finding, Weight, mind, refused
from projects.library.domain.grits import GritFault
from projects.library.domain.words import Operation, Stage
from projects.library.sentences.findings import FINDINGS, finding_sentence
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.looking import findings
from tests.projects.library.strategies import recipes

DOMAIN = Path(checks.__file__).parent
CLAIMS = re.compile(r"\bsafe(?!ty)|\bharmless|\bno danger|\bwithout risk", re.IGNORECASE)


def codes_found() -> set[str]:
    text = "\n".join(path.read_text() for path in DOMAIN.glob("check_*.py"))
    written = set(re.findall(r'(?:refused|mind|give)\(\s*"([a-z_]+)"', text))
    return written | {f"grit_{fault.value}" for fault in GritFault}


def test_every_code_of_the_checks_has_its_sentence():
    assert codes_found() == set(FINDINGS)


def test_no_sentence_says_that_work_is_safe():
    assert [said for said in map(str, FINDINGS.values()) if CLAIMS.search(said)] == []


@pytest.mark.parametrize(
    ("finding", "sentence"),
    [
        (
            refused(
                "stage_unlike_operation",
                "mountings[1].steps[3].stage",
                stage=Stage.ROUGH,
                operation=Operation.SANDING,
                mounting=2,
                step=4,
            ),
            "Mounting 2, step 4, stage: The stage “rough” isn't one for sanding",
        ),
        (
            refused("blank_too_thin", "profile", needs=Length(50_800_000), has=Length(38_100_000)),
            "Drawing: With its ends the drawing needs 50.8\u00a0mm across, and the blank has 38.1\u00a0mm.",
        ),
        (
            mind("tailstock_away_early", "mountings[0].tailstock", mounting=1, step=2, needed_from=5),
            "Mounting 1, tailstock: It is away from step 2 on, but nothing needs that before step 5.",
        ),
        (
            mind("tailstock_away_early", "mountings[0].tailstock", mounting=1, step=2, needed_from=None),
            "Mounting 1, tailstock: It is away from step 2 on, but nothing needs that at all.",
        ),
        (
            refused("between_one_centre", "mountings[0].tailstock", mounting=1),
            "Mounting 1, tailstock: Between centres the tailstock holds the work",
        ),
        (
            refused("tasks_in_a_circle", "preparation", keys=("glue-rings", "cut_blank")),
            "Preparation: These wait for each other in a circle: glue rings, cut blank.",
        ),
    ],
)
def test_a_finding_reads_with_its_place_and_values(finding, sentence):
    assert finding_sentence(finding).startswith(sentence)


def test_lengths_are_in_the_readers_style():
    finding = Finding(
        "blank_too_short", Weight.MIND, "profile", {"needs": Length(25_400_000), "has": Length(1)}
    )

    assert "needs 1\u00a0in along" in finding_sentence(finding, LengthStyle.SIXTEENTHS)


def test_what_the_checks_really_find_has_sentences():
    spoiled = replace(BOWL, grits=(60, 240, 120, 7), left_end=None, right_end=None)

    said = [finding_sentence(finding) for finding in findings(spoiled)]

    assert "Grit 2: From P60 to P240 the grain gets 4.6 times finer. Put a grit between them." in said
    assert "Grit 4: P7 is no grade of ISO 6344. Write one that is, as 120, 180 or 240." in said


@given(recipes())
def test_no_finding_shows_the_inside_of_the_program(recipe):
    for finding in findings(recipe):
        said = finding_sentence(finding)

        assert said.endswith((".", "?"))
        assert "%(" not in said
        assert "Length(" not in said
        assert "_" not in re.sub(r"“[^”]*”", "", said)


def test_the_knob_has_nothing_to_mend():
    assert [finding for finding in findings(KNOB) if finding.weight is Weight.REFUSED] == []
