from __future__ import annotations

from django.apps import AppConfig
from django.core.checks import register


class ClubConfig(AppConfig):
    name = "club"
    verbose_name = "Club"

    def ready(self) -> None:
        from club.base.checks import check_installation

        register(check_installation)
