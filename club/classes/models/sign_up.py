from __future__ import annotations

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.classes.domain import queue
from club.classes.domain.places import Place
from club.classes.models.class_session import ClassSession
from club.lathes.models import Lathe
from club.people.models import Person

TAKING = tuple(sorted(state.value for state in queue.TAKING))
LIVE = tuple(sorted(state.value for state in set(queue.State) - queue.ENDED))


class SignUp(models.Model):
    """One person on a class's list. It is written only from a `queue.Book`, under the class's lock."""

    class State(models.TextChoices):
        HELD = "held", _("kept")
        IN = "in", _("in")
        WAITING = "waiting", _("waiting")
        OFFERED = "offered", _("offered")
        CANCELLED = "cancelled", _("given up")
        LAPSED = "lapsed", _("lapsed")

    class_session = models.ForeignKey(ClassSession, models.CASCADE, related_name="sign_ups")
    person = models.ForeignKey(Person, models.PROTECT, related_name="sign_ups", verbose_name=_("person"))
    number = models.PositiveIntegerField(_("number in the queue"))
    state = models.CharField(_("state"), max_length=9, choices=State)
    lathe = models.ForeignKey(
        Lathe, models.PROTECT, null=True, blank=True, related_name="sign_ups", verbose_name=_("lathe")
    )
    sitting = models.PositiveSmallIntegerField(_("sitting"), null=True, blank=True)
    kit = models.PositiveSmallIntegerField(_("kit"), null=True, blank=True)
    until = models.DateTimeField(_("until"), null=True, blank=True)

    change_fields = ("person", "number", "state", "lathe", "sitting", "kit", "until")

    class Meta:
        ordering = ("class_session", "number")
        verbose_name = _("sign-up")
        verbose_name_plural = _("sign-ups")
        constraints = (
            models.UniqueConstraint("class_session", "number", name="sign_up_number_once_in_a_class"),
            models.UniqueConstraint(
                "class_session", "person", condition=Q(state__in=LIVE), name="person_once_on_a_list"
            ),
            models.UniqueConstraint(
                "class_session", "lathe", "sitting", condition=Q(state__in=TAKING), name="place_taken_once"
            ),
            models.UniqueConstraint("class_session", "kit", name="kit_number_once_in_a_class"),
            models.CheckConstraint(
                condition=Q(lathe__isnull=True, sitting__isnull=True)
                | Q(lathe__isnull=False, sitting__gte=1),
                name="place_is_lathe_and_sitting",
            ),
        )

    def __str__(self) -> str:
        return gettext("%(person)s in %(session)s") % {
            "person": self.person,
            "session": self.class_session,
        }

    @property
    def place(self) -> Place | None:
        if self.lathe is None or self.sitting is None:
            return None
        return Place(self.lathe.number, self.sitting)
