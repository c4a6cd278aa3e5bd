from __future__ import annotations

from tests.paper import typesetting_is_quiet as typesetting_is_quiet
