from __future__ import annotations

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import Count, F, Q
from django.urls import reverse
from django.utils.functional import cached_property
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthField
from club.lathes.domain.own_draw_bars import OwnDrawBar, write_own_draw_bars
from club.lathes.domain.speed_settings import SpeedSetting, write_speed_settings
from club.lathes.domain.threads import parse_thread

HIGHEST_NUMBER = 999
HIGHEST_RPM = 20_000


class LatheQuerySet(models.QuerySet["Lathe"]):
    def whole(self) -> LatheQuerySet:
        """With all that a lathe's page or card shows, in three queries."""
        return self.select_related("workshop").prefetch_related("speed_rows", "draw_bar_rows")

    def in_workshops(self, workshops: frozenset[int] | None) -> LatheQuerySet:
        """Those of these workshops; None means every workshop."""
        return self if workshops is None else self.filter(workshop_id__in=workshops)

    def counts(self) -> dict[str, int]:
        """How many there are in all, and in each condition."""
        tally = {kind.value: Count("pk", filter=Q(condition=kind)) for kind in Lathe.Condition}
        return self.order_by().aggregate(total=Count("pk"), **tally)

    def matching(self, words: str) -> LatheQuerySet:
        """Those whose number is, or whose plate or reason holds, what was typed."""
        found = Q(plate__icontains=words) | Q(condition_reason__icontains=words)
        if words.isdecimal():
            found |= Q(number=int(words[:6]))
        return self.filter(found)


class Lathe(models.Model):
    """One machine, as somebody measured it. What nobody measured is empty, never nought."""

    class Condition(models.TextChoices):
        IN_SERVICE = "in_service", _("in service")
        LIMITED = "limited", _("limited")
        OUT = "out", _("out of service")

    class Taper(models.TextChoices):
        MT0 = "MT0", _("Morse No. 0")
        MT1 = "MT1", _("Morse No. 1")
        MT2 = "MT2", _("Morse No. 2")
        MT3 = "MT3", _("Morse No. 3")
        MT4 = "MT4", _("Morse No. 4")
        MT5 = "MT5", _("Morse No. 5")
        MT6 = "MT6", _("Morse No. 6")
        NONE = "none", _("no taper")

    workshop = models.ForeignKey(
        "club.Workshop", models.PROTECT, related_name="lathes", verbose_name=_("workshop")
    )
    number = models.PositiveSmallIntegerField(
        _("number"),
        validators=[MinValueValidator(1), MaxValueValidator(HIGHEST_NUMBER)],
        help_text=_("The one painted on it. No two in a workshop share one."),
    )
    plate = models.CharField(
        _("maker's plate"),
        max_length=120,
        blank=True,
        help_text=_("What the plate says, as it stands there."),
    )

    headstock_taper = models.CharField(_("headstock taper"), max_length=4, choices=Taper, blank=True)
    tailstock_taper = models.CharField(_("tailstock taper"), max_length=4, choices=Taper, blank=True)
    nose_thread = models.CharField(
        _("nose thread"), max_length=20, blank=True, help_text=_("As 1-8, 1 1/4-8 or M33 x 3.5")
    )
    register_diameter = LengthField(_("register diameter"), null=True, blank=True)
    register_length = LengthField(_("register length"), null=True, blank=True)
    through_bore = LengthField(
        _("through bore"),
        null=True,
        blank=True,
        zero=True,
        help_text=_("Narrowest place. 0 mm for a solid spindle."),
    )
    nose_to_handwheel = LengthField(_("nose to handwheel face"), null=True, blank=True)
    swing_over_bed = LengthField(_("swing over bed"), null=True, blank=True)
    swing_over_banjo = LengthField(_("swing over banjo"), null=True, blank=True)
    centres_greatest = LengthField(_("between centres, greatest"), null=True, blank=True)
    centres_least = LengthField(_("between centres, least"), null=True, blank=True)
    plate_speed = models.PositiveIntegerField(
        _("greatest speed on the plate"),
        null=True,
        blank=True,
        validators=[MinValueValidator(1), MaxValueValidator(HIGHEST_RPM)],
    )
    reverse = models.BooleanField(_("runs in reverse"), null=True, blank=True)
    spindle_lock = models.BooleanField(_("spindle lock"), null=True, blank=True)
    no_volt_release = models.BooleanField(_("no-volt release"), null=True, blank=True)
    low_stand = models.BooleanField(_("low stand"), null=True, blank=True)

    condition = models.CharField(
        _("condition"), max_length=10, choices=Condition, default=Condition.IN_SERVICE
    )
    condition_reason = models.CharField(_("reason"), max_length=160, blank=True)
    revision = models.PositiveIntegerField(default=1, editable=False)

    objects = LatheQuerySet.as_manager()

    change_fields = (
        "workshop",
        "number",
        "plate",
        "headstock_taper",
        "tailstock_taper",
        "nose_thread",
        "register_diameter",
        "register_length",
        "through_bore",
        "nose_to_handwheel",
        "swing_over_bed",
        "swing_over_banjo",
        "centres_greatest",
        "centres_least",
        "plate_speed",
        "reverse",
        "spindle_lock",
        "no_volt_release",
        "low_stand",
        "condition",
        "condition_reason",
    )

    class Meta:
        ordering = ("workshop__name", "number")
        verbose_name = _("lathe")
        verbose_name_plural = _("lathes")
        constraints = (
            models.UniqueConstraint(fields=("workshop", "number"), name="lathe_number_once_in_a_workshop"),
            models.CheckConstraint(
                condition=Q(centres_least__lte=F("centres_greatest")),
                name="lathe_least_centres_not_above_greatest",
            ),
            models.CheckConstraint(
                condition=Q(condition="in_service") | ~Q(condition_reason=""), name="lathe_limit_has_a_reason"
            ),
        )

    def __str__(self) -> str:
        return gettext("Lathe %(number)s") % {"number": self.number}

    def get_absolute_url(self) -> str:
        return reverse("lathes:lathe", args=[self.pk])

    @cached_property
    def speeds(self) -> tuple[SpeedSetting, ...]:
        return tuple(row.setting for row in self.speed_rows.all())

    @cached_property
    def draw_bars(self) -> tuple[OwnDrawBar, ...]:
        return tuple(row.bar for row in self.draw_bar_rows.all())

    def forget_rows(self) -> None:
        """Drop the remembered speeds and bars after their rows were written anew."""
        for name in ("speeds", "draw_bars"):
            self.__dict__.pop(name, None)
        self._prefetched_objects_cache: dict[str, object] = {}

    @property
    def lowest_speed(self) -> SpeedSetting | None:
        return min(self.speeds, key=lambda setting: setting.low, default=None)

    @property
    def speeds_above_plate(self) -> bool:
        return self.plate_speed is not None and any(
            setting.high > self.plate_speed for setting in self.speeds
        )

    def change_extras(self) -> dict[str, str]:
        """What the change log keeps besides the columns."""
        return {
            gettext("speeds"): write_speed_settings(self.speeds, "; "),
            gettext("its own draw bars"): write_own_draw_bars(self.draw_bars, "; "),
        }


class LatheSpeed(models.Model):
    """One setting a hand can choose: a belt position, fixed or with a range, or the dial."""

    lathe = models.ForeignKey(Lathe, models.CASCADE, related_name="speed_rows")
    position = models.PositiveSmallIntegerField()
    label = models.CharField(max_length=20)
    low = models.PositiveIntegerField()
    high = models.PositiveIntegerField()

    class Meta:
        ordering = ("position",)
        constraints = (
            models.UniqueConstraint(fields=("lathe", "position"), name="lathe_speed_position_once"),
            models.CheckConstraint(
                condition=Q(low__gte=1, low__lte=F("high")), name="lathe_speed_low_not_above_high"
            ),
        )

    def __str__(self) -> str:
        return self.label

    @property
    def setting(self) -> SpeedSetting:
        return SpeedSetting(self.label, self.low, self.high)


class LatheDrawBar(models.Model):
    """A draw bar that stays with the lathe."""

    lathe = models.ForeignKey(Lathe, models.CASCADE, related_name="draw_bar_rows")
    position = models.PositiveSmallIntegerField()
    label = models.CharField(max_length=20)
    thread = models.CharField(max_length=20)
    length = LengthField()

    class Meta:
        ordering = ("position",)
        constraints = (
            models.UniqueConstraint(fields=("lathe", "position"), name="lathe_draw_bar_position_once"),
        )

    def __str__(self) -> str:
        return self.label

    @property
    def bar(self) -> OwnDrawBar:
        return OwnDrawBar(self.label, parse_thread(self.thread), self.length)
