from __future__ import annotations

from django.db import models
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthField


class Sized(models.Model):
    """Sizes as they measure: sticks have a length, sheets width and length, boards all three."""

    thickness = LengthField(_("thickness"), null=True, blank=True)
    width = LengthField(_("width"), null=True, blank=True)
    length = LengthField(_("length"), null=True, blank=True)

    class Meta:
        abstract = True
