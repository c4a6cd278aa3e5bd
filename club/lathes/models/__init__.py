from __future__ import annotations

from club.lathes.models.lathe import Lathe, LatheDrawBar, LatheSpeed
from club.lathes.models.workshop import Workshop

__all__ = ["Lathe", "LatheDrawBar", "LatheSpeed", "Workshop"]
