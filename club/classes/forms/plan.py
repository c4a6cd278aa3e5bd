"""The form of a class: what is taught where, when, by whom, at which lathes."""

from __future__ import annotations

from typing import Any

from django import forms
from django.db.models import Q, QuerySet
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.roles import Role
from club.classes.book import places_at
from club.classes.clashing import class_clashes
from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import ClassHours
from club.classes.domain.places import capacity
from club.classes.domain.time_plan import time_plan
from club.classes.forms.clashes import ClashForm
from club.classes.forms.inputs import ClockInput, DayInput, WholeInput
from club.classes.models import ClassSession
from club.classes.models.class_session import LONGEST, MOST_SITTINGS, MOST_SPARES
from club.classes.sentences import refusal
from club.lathes.models import Lathe, Workshop
from club.people.models import Person
from projects.library.models import Edition

TEACHING = (Role.INSTRUCTOR, Role.COORDINATOR)
HELPING = (*TEACHING, Role.HELPER)


class BeginForm(forms.Form):
    """What a new class is about and where: the rest of its form follows from these two."""

    edition = forms.ModelChoiceField(
        Edition.objects.none(),
        label=_("project"),
        empty_label=_("choose a project"),
        error_messages={"required": _("Choose the project."), "invalid_choice": _("Choose one of these.")},
    )
    workshop = forms.ModelChoiceField(
        Workshop.objects.none(),
        label=_("workshop"),
        empty_label=_("choose a workshop"),
        error_messages={"required": _("Choose the workshop."), "invalid_choice": _("Choose one of these.")},
    )

    def __init__(self, data: Any, workshops: QuerySet[Workshop]) -> None:
        super().__init__(data)
        _choice(self, "edition").queryset = teachable()
        _choice(self, "workshop").queryset = workshops


class LatheTicks(forms.ModelMultipleChoiceField[Lathe]):
    """Lathes by their number, with what hinders one."""

    def label_from_instance(self, obj: Any) -> str:
        lathe: Lathe = obj
        if lathe.condition == Lathe.Condition.IN_SERVICE:
            return str(lathe)
        words = {"lathe": lathe, "condition": lathe.get_condition_display(), "why": lathe.condition_reason}
        return gettext("%(lathe)s, %(condition)s: %(why)s") % words


class PlanForm(ClashForm, forms.ModelForm[ClassSession]):
    """`instance` has its workshop."""

    lathes = LatheTicks(
        Lathe.objects.none(),
        label=_("lathes for students"),
        widget=forms.CheckboxSelectMultiple,
        help_text=_("Those that can hold this project. One that is out of service gives no place."),
        error_messages={
            "required": _("Tick at least one lathe."),
            "invalid_choice": _("One of these lathes isn't in this workshop any more. Tick them again."),
            "invalid_pk_value": _("One of these lathes isn't in this workshop any more. Tick them again."),
        },
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    class Meta:
        model = ClassSession
        fields = (
            "edition",
            "day",
            "at",
            "minutes",
            "sittings",
            "instructor",
            "helpers",
            "lathes",
            "demonstration_lathe",
            "minimum",
            "lowered_to",
            "demonstrations",
            "spares_rule",
            "spares_number",
            "kits_for",
            "note",
        )
        widgets = {
            "day": DayInput(),
            "at": ClockInput(),
            "helpers": forms.CheckboxSelectMultiple,
            "spares_rule": forms.RadioSelect,
            "note": forms.Textarea(attrs={"rows": 3}),
        }
        error_messages = {
            "edition": {"required": _("Choose the project.")},
            "day": {
                "required": _("Choose the day."),
                "invalid": _("Write the day as year, month, day: 2027-03-04."),
            },
            "at": {"required": _("Say when it begins, as 18:30."), "invalid": _("Write the time as 18:30.")},
            "instructor": {"required": _("Choose who teaches.")},
            "note": {"max_length": _("That is more than 600 characters. Shorten it.")},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        workshop = self.instance.workshop
        lathes = Lathe.objects.filter(workshop=workshop)
        _choice(self, "lathes").queryset = lathes
        _choice(self, "demonstration_lathe").queryset = lathes
        _choice(self, "demonstration_lathe").empty_label = _(
            "none: the demonstration needs no lathe of its own"
        )
        _choice(self, "edition").queryset = teachable(self.instance.edition_id)
        _choice(self, "instructor").queryset = people_with(TEACHING, workshop, self.instance.instructor_id)
        _choice(self, "instructor").empty_label = _("choose who teaches")
        _choice(self, "helpers").queryset = people_with(HELPING, workshop)
        self._numbers()
        self.fields["revision"].initial = self.instance.revision
        if self.instance.pk:
            self.initial["lathes"] = list(self.instance.lathes.all())
            self.initial["helpers"] = list(self.instance.helpers.all())

    def _numbers(self) -> None:
        """Whole numbers within bounds, each with the sentence that says them."""
        bounds = {
            "minutes": (1, LONGEST),
            "sittings": (1, MOST_SITTINGS),
            "minimum": (0, 500),
            "lowered_to": (0, 500),
            "demonstrations": (0, 20),
            "spares_number": (0, MOST_SPARES),
            "kits_for": (0, 500),
        }
        for name, (least, most) in bounds.items():
            said = gettext("Write a whole number from %(least)s to %(most)s.") % {
                "least": least,
                "most": most,
            }
            model_field = self.fields[name]
            self.fields[name] = forms.IntegerField(
                label=model_field.label,
                help_text=model_field.help_text,
                required=model_field.required,
                min_value=least,
                max_value=most,
                widget=WholeInput(),
                error_messages=dict.fromkeys(("required", "invalid", "min_value", "max_value"), said),
            )

    def clean(self) -> dict[str, Any]:
        given = super().clean() or self.cleaned_data
        self._clean_spares(given)
        self._clean_people(given)
        hours = self._clean_hours(given)
        self._clean_time(given)
        self._clean_places(given)
        if hours and not self.errors:
            self._clean_clashes(given)
        return given

    def _clean_spares(self, given: dict[str, Any]) -> None:
        rule = given.get("spares_rule")
        if rule == ClassSession.SparesRule.RECIPE:
            given["spares_number"] = None
        elif rule and given.get("spares_number") is None and "spares_number" not in self.errors:
            self.add_error("spares_number", gettext("Say how many, or keep the spares of the recipe."))

    def _clean_people(self, given: dict[str, Any]) -> None:
        if given.get("instructor") in (given.get("helpers") or ()):
            self.add_error("helpers", gettext("Whoever teaches isn't counted as a helper too. Untick them."))

    def _clean_hours(self, given: dict[str, Any]) -> ClassHours | None:
        if {"day", "at", "minutes"} & set(self.errors) or not given.get("minutes"):
            return None
        session = ClassSession(
            workshop=self.instance.workshop, **{f: given[f] for f in ("day", "at", "minutes")}
        )
        try:
            return session.hours
        except ClassError as error:
            self.add_error("at" if error.code == "no_such_time" else "day", refusal(error))
            return None

    def _clean_time(self, given: dict[str, Any]) -> None:
        edition, minutes, sittings = (given.get(name) for name in ("edition", "minutes", "sittings"))
        if not (edition and minutes and sittings):
            return
        plan = time_plan(edition.recipe.time, sittings, minutes)
        if plan.over:
            said = gettext(
                "Briefing, demonstration, %(sittings)s times hands-on and change-over, and clean-up need "
                "%(needed)s of %(minutes)s min. Give it more time, or fewer sittings."
            )
            values = {"sittings": sittings, "needed": plan.needed, "minutes": minutes}
            self.add_error("sittings", said % values)

    def _clean_places(self, given: dict[str, Any]) -> None:
        lathes, sittings = given.get("lathes"), given.get("sittings")
        if lathes is None or not sittings:
            return
        demonstration = given.get("demonstration_lathe")
        places = places_at(lathes, demonstration.pk if demonstration else None, sittings)
        try:
            most = capacity(places, given.get("lowered_to"))
        except ClassError as error:
            self.add_error("lowered_to", refusal(error))
            return
        if (given.get("minimum") or 0) > most:
            said = gettext("There are %(places)s places, so fewer people than that are the least.")
            self.add_error("minimum", said % {"places": most})

    def _clean_clashes(self, given: dict[str, Any]) -> None:
        planned = ClassSession(
            pk=self.instance.pk,
            workshop=self.instance.workshop,
            **{name: given[name] for name in ("day", "at", "minutes")},
        )
        self.show_clashes(class_clashes(planned, [given["instructor"], *given["helpers"]]))


def teachable(also: int | None = None) -> QuerySet[Edition]:
    """The newest kept edition of each project, and the one a class has already."""
    newest = Edition.objects.kept().order_by("project", "-number")
    latest: dict[int, int] = {}
    for pk, project in newest.values_list("pk", "project_id"):
        latest.setdefault(project, pk)
    chosen = {*latest.values(), *((also,) if also else ())}
    return Edition.objects.filter(pk__in=chosen).order_by("title", "number")


def people_with(roles: tuple[Role, ...], workshop: Workshop, also: int | None = None) -> QuerySet[Person]:
    """Everybody who has one of these roles here or in every workshop, and the one a class has already."""
    here = Q(role_grants__workshop=workshop) | Q(role_grants__workshop=None)
    return Person.objects.filter(Q(here, role_grants__role__in=roles) | Q(pk=also)).distinct()


def _choice(form: forms.BaseForm, name: str) -> Any:
    return form.fields[name]
