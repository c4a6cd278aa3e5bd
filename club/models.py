"""Re-exports every room's rows, because Django looks for an app's models here and nowhere else."""

from __future__ import annotations

from club.base.models import *  # noqa: F403
from club.classes.models import *  # noqa: F403
from club.lathes.models import *  # noqa: F403
from club.people.models import *  # noqa: F403
from club.stores.models import *  # noqa: F403
