"""A tapered socket or plug, in mm, as the figures draw it."""

from __future__ import annotations

from dataclasses import dataclass

from club.lathes.domain.tapers import MorseTaper

NM_PER_MM = 1_000_000


@dataclass(frozen=True)
class Socket:
    """`mouth`: diameter at the gauge line; `ratio`: 1 in so many, on the diameter; `depth`: its length."""

    mouth: float
    ratio: float
    depth: float

    def radius_at(self, depth: float) -> float:
        """Half the diameter `depth` mm in from the gauge line."""
        return (self.mouth - depth / self.ratio) / 2


def socket_of(taper: MorseTaper) -> Socket:
    """The published size at its true taper, as deep as its plug is long."""
    return Socket(
        mouth=taper.gauge_diameter_nm / NM_PER_MM,
        ratio=float(taper.ratio),
        depth=taper.plug_depth_nm / NM_PER_MM,
    )
