from __future__ import annotations

import re
from io import StringIO

import pytest
from django.core.management import call_command


@pytest.mark.pdf
def test_every_work_is_timed_without_a_database():
    told = StringIO()

    call_command("benchmark", times=1, students=[2], stdout=told)

    lines = told.getvalue().splitlines()
    assert len(lines) == 9
    assert all(re.fullmatch(r"\S.{31} +[0-9]+\.[0-9] (ms|MiB)", line) for line in lines)
