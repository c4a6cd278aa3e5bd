"""How far, from an end inwards, a piece only grows thicker: there a nub still stands round it."""

from __future__ import annotations

from collections.abc import Sequence

from projects.geometry.pieces import Arc, Piece, Point, Straight

# Sixty halvings bring any angle down to the last bit of a float.
HALVINGS = 60


def mirrored(run: Sequence[Piece]) -> tuple[Piece, ...]:
    """The same piece seen from the other side, left and right changed over about z = 0."""
    return tuple(_mirrored(piece) for piece in reversed(run))


def _mirrored(piece: Piece) -> Piece:
    ends = (-piece.z2, piece.r2, -piece.z1, piece.r1)
    return Straight(*ends) if isinstance(piece, Straight) else Arc(*ends, piece.apothem, piece.inwards)


def grows_until(run: Sequence[Piece], r: float) -> float:
    """The z up to which the piece grows from its left end and is thinner than this radius."""
    if run[0].r1 >= r:
        return run[0].z1
    for piece in run:
        top = _top(piece)
        if top[1] <= piece.r1:
            return piece.z1
        if top[1] >= r:
            return _crossing(piece, r)
        if top != (piece.z2, piece.r2):
            return top[0]
    return run[-1].z2


def _top(piece: Piece) -> Point:
    """Where the piece stops growing or shrinking first."""
    return piece.turn or (piece.z2, piece.r2)


def _crossing(piece: Piece, r: float) -> float:
    """The z where a piece that grows from its start reaches this radius."""
    if isinstance(piece, Straight):
        return piece.z1 + piece.width * (r - piece.r1) / (piece.r2 - piece.r1)
    low, high = -piece.half_angle, piece.half_angle if piece.turn is None else piece.tilt
    for _halving in range(HALVINGS):
        middle = (low + high) / 2
        below = piece.at_angle(middle)[1] < r
        low, high = (middle, high) if below else (low, middle)
    return piece.at_angle(high)[0]
