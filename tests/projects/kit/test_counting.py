from __future__ import annotations

import pytest

from projects.kit.counting import Heads, kits_for
from projects.library.domain.materials import SpareCount, SparePercent


@pytest.mark.parametrize(
    ("students", "demonstrations", "spares", "kits"),
    [
        (12, 1, SparePercent(10), 15),
        (10, 1, SpareCount(2), 13),
        (9, 1, SparePercent(10), 11),
        (1, 1, SparePercent(10), 3),
        (1, 0, SpareCount(0), 1),
        (0, 1, SparePercent(10), 2),
        (0, 0, SparePercent(10), 0),
        (0, 0, SpareCount(2), 0),
        (12, 1, SparePercent(0), 13),
    ],
)
def test_kits_are_for_students_demonstrations_and_spares(students, demonstrations, spares, kits):
    """10 % of 13 is 1.3, so 2 spares; of 10 exactly 1; of 2 still 1; a class of nobody needs none."""
    assert kits_for(Heads(students, demonstrations), spares).all == kits


def test_a_number_of_people_below_nought_is_refused():
    with pytest.raises(ValueError, match="below nought"):
        Heads(-1)
