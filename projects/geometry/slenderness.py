"""How readily a piece bends while it is turned: unsupported length over the diameter of an equal plain bar.

That bar gives as much in bending as the piece: its d⁴ is the unsupported length over the integral of dz / d⁴,
since the stiffness of a round section goes with d⁴. A bore isn't counted, so what is turned after drilling is
more slender than said here. The value warns; that a piece isn't slender makes nothing safe.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from projects.geometry.bending import compliance
from projects.geometry.growth import grows_until, mirrored
from projects.geometry.marks import Profile, ProfileError
from projects.geometry.pieces import NM_PER_MM, Piece, mm, pieces

OVERHUNG_COUNTS = 2


@dataclass(frozen=True)
class Stub:
    """What is left at an end to hold or support the piece by, a nub, tenon or waste, in nanometres.

    `length` is what of it stands free between the piece and what holds or supports it.
    """

    diameter: int
    length: int = 0


@dataclass(frozen=True)
class Grip:
    """The piece itself is held at this end, over so many nanometres of its length."""

    length: int


End = Stub | Grip
BARE = Stub(0)


@dataclass(frozen=True)
class Slenderness:
    """`ratio` is the unsupported length over the equal bar's diameter, an overhung length counted double."""

    unsupported_mm: float
    bar_mm: float
    overhung: bool

    @property
    def counted_mm(self) -> float:
        return self.unsupported_mm * (OVERHUNG_COUNTS if self.overhung else 1)

    @property
    def ratio(self) -> float:
        return self.counted_mm / self.bar_mm


@dataclass(frozen=True)
class _FreeEnd:
    """Where the drawn piece begins to count, and what stands free before that, in mm and 1/mm³."""

    z: float
    length: float
    compliance: float


def slenderness(
    profile: Profile, *, left: End = BARE, right: End = BARE, overhung: bool = False
) -> Slenderness:
    """The slenderness of a checked profile between what holds it; relative error under 1e-12.

    From an end inwards the diameter is never taken below the stub's, for as long as the piece grows thicker
    there. `overhung` is for work held at one end. Raises ProfileError: nothing_left_at_end for an end that
    runs out to a point without a stub, nothing_unsupported where the grips leave nothing free.

    A bar of 10 mm, 100 mm long, held at both ends, gives 10, overhung 20.
    """
    _check_ends(profile, left, right)
    run = pieces(profile)
    before = _free_end(run, left, run[-1].z2 - _gripped(right))
    after = _free_end(mirrored(run), right, -run[0].z1 - _gripped(left))
    low, high = before.z, -after.z
    length = before.length + (high - low) + after.length
    body = sum(compliance(piece, low, high) for piece in run)
    bar = (length / (before.compliance + body + after.compliance)) ** 0.25
    return Slenderness(length, bar, overhung)


def _gripped(end: End) -> float:
    return mm(end.length) if isinstance(end, Grip) else 0.0


def _free_end(run: Sequence[Piece], end: End, limit: float) -> _FreeEnd:
    """`limit` is where the other end's grip begins."""
    start = run[0].z1
    if isinstance(end, Grip):
        return _FreeEnd(start + _gripped(end), 0.0, 0.0)
    z = min(grows_until(run, end.diameter / (2 * NM_PER_MM)), limit)
    length = mm(end.length) + z - start
    return _FreeEnd(z, length, length / mm(end.diameter) ** 4 if length else 0.0)


def _check_ends(profile: Profile, left: End, right: End) -> None:
    first, last = profile.marks[0], profile.marks[-1]
    for number, mark, end in ((1, first, left), (len(profile.marks), last, right)):
        if isinstance(end, Stub) and mark.diameter == end.diameter == 0:
            raise ProfileError("nothing_left_at_end", mark=number)
    gripped = sum(end.length for end in (left, right) if isinstance(end, Grip))
    if gripped >= last.at - first.at:
        raise ProfileError("nothing_unsupported", mark=len(profile.marks))
