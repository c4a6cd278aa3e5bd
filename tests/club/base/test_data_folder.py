from __future__ import annotations

import os
import stat
import subprocess
import sys

from django.conf import settings


def test_the_folder_of_the_data_is_made_for_its_owner_alone(tmp_path):
    data = tmp_path / "club" / "data"

    subprocess.run(
        [sys.executable, "-c", "import club.settings"],
        env={**os.environ, "HANDWHEEL_DATA": str(data)},
        cwd=settings.BASE_DIR,
        check=True,
    )

    assert stat.S_IMODE(data.stat().st_mode) == 0o700
