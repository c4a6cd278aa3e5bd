"""Re-exports every room's rows, because Django looks for an app's models here and nowhere else."""

from __future__ import annotations

from projects.library.models import *  # noqa: F403
