from __future__ import annotations

from datetime import datetime
from functools import cached_property
from typing import Any
from zoneinfo import ZoneInfo

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import F, Q
from django.urls import reverse
from django.utils.formats import date_format
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.classes.domain.local_time import ClassHours
from club.classes.domain.queue import TAKING
from club.lathes.models import Lathe, Workshop
from club.people.models import Person
from projects.library.domain.materials import SpareCount, SparePercent, Spares
from projects.library.models import Edition

MOST_SITTINGS = 6
LONGEST = 720
MOST_SPARES = 100


class ClassSessionQuerySet(models.QuerySet["ClassSession"]):
    def in_workshops(self, workshops: frozenset[int] | None) -> ClassSessionQuerySet:
        """Those in these workshops; None means every workshop."""
        return self if workshops is None else self.filter(workshop_id__in=workshops)

    def planned(self) -> ClassSessionQuerySet:
        return self.filter(state=ClassSession.State.PLANNED)

    def coming(self, now: datetime) -> ClassSessionQuerySet:
        """Those that aren't over, cancelled ones too, the next one first."""
        return self.filter(ends__gt=now).order_by("begins", "pk")

    def past(self, now: datetime) -> ClassSessionQuerySet:
        """Those that are over, the last one first."""
        return self.filter(ends__lte=now).order_by("-begins", "-pk")

    def with_taken(self, now: datetime) -> ClassSessionQuerySet:
        """Each with how many places are taken by now as `taken`, and how many people wait as `waiting`."""
        unlapsed = Q(sign_ups__until=None) | Q(sign_ups__until__gt=now)
        taken = models.Count("sign_ups", filter=unlapsed & Q(sign_ups__state__in=TAKING), distinct=True)
        waiting = models.Count("sign_ups", filter=Q(sign_ups__state="waiting"), distinct=True)
        return self.annotate(taken=taken, waiting=waiting)

    def whole(self) -> ClassSessionQuerySet:
        """With all that its page shows of lathes and people, in five queries."""
        return self.select_related(
            "edition__project", "workshop", "instructor", "demonstration_lathe"
        ).prefetch_related("helpers", "lathes", "sign_ups__person", "sign_ups__lathe")


class ClassSession(models.Model):
    """One class: an edition taught in a workshop on a day.

    Local day and time and the workshop's zone are the truth; `begins` and `ends` (UTC) follow from them with
    every save, for order and comparison.
    """

    class State(models.TextChoices):
        PLANNED = "planned", _("planned")
        CANCELLED = "cancelled", _("cancelled")

    class SparesRule(models.TextChoices):
        RECIPE = "recipe", _("as the recipe has it")
        COUNT = "count", _("a number of kits")
        PERCENT = "percent", _("a share in percent, rounded up to whole kits")

    edition = models.ForeignKey(Edition, models.PROTECT, related_name="classes", verbose_name=_("project"))
    workshop = models.ForeignKey(Workshop, models.PROTECT, related_name="classes", verbose_name=_("workshop"))
    day = models.DateField(_("day"))
    at = models.TimeField(_("begins"), help_text=_("By the clock in the workshop."))
    minutes = models.PositiveSmallIntegerField(
        _("minutes"), validators=[MinValueValidator(1), MaxValueValidator(LONGEST)]
    )
    begins = models.DateTimeField(editable=False, db_index=True)
    ends = models.DateTimeField(editable=False, db_index=True)

    sittings = models.PositiveSmallIntegerField(
        _("sittings"), default=1, validators=[MinValueValidator(1), MaxValueValidator(MOST_SITTINGS)]
    )
    minimum = models.PositiveSmallIntegerField(
        _("fewest people"), default=1, help_text=_("With fewer the class isn't worth holding.")
    )
    places = models.PositiveSmallIntegerField(_("places"), default=0, editable=False)
    lowered_to = models.PositiveSmallIntegerField(
        _("lowered to"), null=True, blank=True, help_text=_("Fewer places than the lathes give.")
    )
    instructor = models.ForeignKey(
        Person, models.PROTECT, related_name="classes_taught", verbose_name=_("instructor")
    )
    helpers = models.ManyToManyField(
        Person, related_name="classes_helped", blank=True, verbose_name=_("helpers")
    )
    lathes = models.ManyToManyField(Lathe, related_name="classes", blank=True, verbose_name=_("lathes"))
    demonstration_lathe = models.ForeignKey(
        Lathe,
        models.PROTECT,
        null=True,
        blank=True,
        related_name="demonstrations",
        verbose_name=_("demonstration lathe"),
    )

    demonstrations = models.PositiveSmallIntegerField(
        _("demonstration pieces"), default=1, validators=[MaxValueValidator(20)]
    )
    spares_rule = models.CharField(
        _("spare kits"), max_length=7, choices=SparesRule, default=SparesRule.RECIPE
    )
    spares_number = models.PositiveSmallIntegerField(
        _("that number, or percent"), null=True, blank=True, validators=[MaxValueValidator(MOST_SPARES)]
    )
    kits_for = models.PositiveSmallIntegerField(
        _("kits for"),
        null=True,
        blank=True,
        help_text=_("So many students, when you know. Empty: as many as there are places."),
    )
    note = models.TextField(
        _("note"),
        max_length=600,
        blank=True,
        help_text=_("What is different this time. It stands on the handout."),
    )

    state = models.CharField(_("state"), max_length=9, choices=State, default=State.PLANNED, editable=False)
    last_number = models.PositiveIntegerField(default=0, editable=False)
    revision = models.PositiveIntegerField(default=1, editable=False)

    objects = ClassSessionQuerySet.as_manager()

    change_fields = (
        "edition",
        "workshop",
        "day",
        "at",
        "minutes",
        "sittings",
        "minimum",
        "places",
        "lowered_to",
        "instructor",
        "demonstration_lathe",
        "demonstrations",
        "spares_rule",
        "spares_number",
        "kits_for",
        "note",
        "state",
    )

    class Meta:
        ordering = ("begins", "pk")
        verbose_name = _("class")
        verbose_name_plural = _("classes")
        constraints = (
            models.CheckConstraint(condition=Q(sittings__gte=1), name="class_has_a_sitting"),
            models.CheckConstraint(condition=Q(ends__gt=F("begins")), name="class_ends_after_it_begins"),
            models.CheckConstraint(
                condition=Q(spares_rule="recipe") | Q(spares_number__isnull=False),
                name="class_spares_have_a_number",
            ),
        )

    def __str__(self) -> str:
        day = date_format(self.day, "j F Y")
        return gettext("%(title)s, %(day)s") % {"title": self.edition.title, "day": day}

    def save(self, **kwargs: Any) -> None:
        hours = self.hours
        self.begins, self.ends = hours.begins, hours.ends
        fields = kwargs.get("update_fields")
        if fields:
            kwargs["update_fields"] = {*fields, "begins", "ends"}
        super().save(**kwargs)

    def get_absolute_url(self) -> str:
        return reverse("classes:class", args=[self.pk])

    @property
    def hours(self) -> ClassHours:
        """Raises ClassError for a time that clocks of the workshop don't show."""
        return ClassHours(self.day, self.at, self.minutes, ZoneInfo(self.workshop.zone))

    @property
    def is_cancelled(self) -> bool:
        return self.state == self.State.CANCELLED

    @property
    def spares(self) -> Spares:
        """The class's own rule, or the recipe's."""
        if self.spares_rule == self.SparesRule.COUNT:
            return SpareCount(self.spares_number or 0)
        if self.spares_rule == self.SparesRule.PERCENT:
            return SparePercent(self.spares_number or 0)
        return self.edition.recipe.spares

    @property
    def students(self) -> int:
        """For how many students kits are made."""
        return self.places if self.kits_for is None else self.kits_for

    @cached_property
    def helper_names(self) -> list[str]:
        return [str(person) for person in self.helpers.all()]

    def change_extras(self) -> dict[str, str]:
        """What the change log keeps besides the columns."""
        return {
            gettext("helpers"): ", ".join(str(person) for person in self.helpers.all()),
            gettext("lathes"): ", ".join(str(lathe.number) for lathe in self.lathes.all()),
        }
