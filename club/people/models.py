from __future__ import annotations

from typing import Any

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.core.validators import RegexValidator
from django.db import models
from django.db.models import Q
from django.urls import reverse
from django.utils.functional import cached_property
from django.utils.translation import gettext_lazy as _

from club.base.quantities.length import LengthStyle
from club.base.roles import Grant, Role
from club.people import sentences
from club.people.names import sign_in_key, sought

__all__ = ["Account", "Person", "RoleGrant"]


class PersonQuerySet(models.QuerySet["Person"]):
    def whole(self) -> PersonQuerySet:
        """With sign-in and roles, in two queries."""
        return self.select_related("account").prefetch_related("role_grants__workshop")

    def who_can_sign_in(self) -> PersonQuerySet:
        return self.filter(account__is_active=True)

    def matching(self, words: str) -> PersonQuerySet:
        """Those whose name holds every word that was typed."""
        found = self
        for word in sought(words).split():
            found = found.filter(sought_name__contains=word)
        return found


class Person(models.Model):
    """Somebody the club knows: may have no e-mail, may share one, may never sign in."""

    class AgeBand(models.TextChoices):
        ADULT = "adult", _("adult")
        SIXTEEN = "16_17", _("16 or 17")
        YOUNGER = "under_16", _("under 16")

    name = models.CharField(_("name"), max_length=120, help_text=_("As it should stand on a kit bag."))
    # SQLite compares only the letters of ASCII without case, and knows nothing of accents.
    sought_name = models.CharField(max_length=200, editable=False, db_index=True)
    email = models.EmailField(_("e-mail"), blank=True, help_text=_("Two people may share one, or have none."))
    phone = models.CharField(_("phone"), max_length=40, blank=True)
    age_band = models.CharField(_("age"), max_length=8, choices=AgeBand, default=AgeBand.ADULT)
    revision = models.PositiveIntegerField(default=1, editable=False)

    objects = PersonQuerySet.as_manager()

    change_fields = ("name", "email", "phone", "age_band")

    class Meta:
        ordering = ("sought_name", "pk")
        verbose_name = _("person")
        verbose_name_plural = _("people")

    def __str__(self) -> str:
        return self.name

    def save(self, **kwargs: Any) -> None:
        self.sought_name = sought(self.name)[:200]
        fields = kwargs.get("update_fields")
        if fields and "name" in fields:
            kwargs["update_fields"] = {*fields, "sought_name"}
        super().save(**kwargs)

    def get_absolute_url(self) -> str:
        return reverse("people:person", args=[self.pk])

    @property
    def sign_in(self) -> Account | None:
        """The account this person signs in with, if there is one."""
        return getattr(self, "account", None)


class SignInNameField(models.CharField[str, str]):
    """A name that is one name in whatever case it is typed: it is kept, and looked for, by its key."""

    def get_prep_value(self, value: Any) -> Any:
        value = super().get_prep_value(value)
        return sign_in_key(value) if isinstance(value, str) else value

    def pre_save(self, model_instance: models.Model, add: bool) -> Any:
        value = self.get_prep_value(super().pre_save(model_instance, add))
        setattr(model_instance, self.attname, value)
        return value


class AccountManager(BaseUserManager["Account"]):
    def get_queryset(self) -> models.QuerySet[Account]:
        # Every page names the person who reads it.
        return super().get_queryset().select_related("person")

    def create_account(
        self, person: Person, name: str, password: str, *, must_change_password: bool = False
    ) -> Account:
        """A sign-in for this person. The name must be free; the password must have been checked already."""
        account = self.model(person=person, name=name, must_change_password=must_change_password)
        account.set_password(password)
        account.save(using=self._db)
        return account


class Account(AbstractBaseUser):
    """A way to sign in. What it may do follows from the roles of its person alone."""

    LENGTH_STYLES = (
        (LengthStyle.AS_TYPED.value, _("as they were typed")),
        (LengthStyle.SIXTEENTHS.value, _("inches, to 1/16")),
        (LengthStyle.THIRTY_SECONDS.value, _("inches, to 1/32")),
        (LengthStyle.SIXTY_FOURTHS.value, _("inches, to 1/64")),
        (LengthStyle.MILLIMETRES.value, _("millimetres")),
    )

    person = models.OneToOneField(Person, models.PROTECT, related_name="account", verbose_name=_("person"))
    name = SignInNameField(
        _("sign-in name"),
        max_length=60,
        unique=True,
        validators=[RegexValidator(r"\A[\w.@+-]+\Z", sentences.NAME_LETTERS)],
        help_text=_("One word, as ilse.b. Capitals make no difference."),
        error_messages={"unique": sentences.NAME_TAKEN},
    )
    lengths = models.CharField(
        _("lengths are shown"), max_length=20, choices=LENGTH_STYLES, default=LengthStyle.AS_TYPED.value
    )
    is_active = models.BooleanField(_("may sign in"), default=True)
    must_change_password = models.BooleanField(_("must choose a password"), default=False)

    objects = AccountManager()

    change_fields = ("name", "is_active", "must_change_password", "lengths")

    USERNAME_FIELD = "name"
    REQUIRED_FIELDS = []

    class Meta:
        ordering = ("name",)
        verbose_name = _("account")
        verbose_name_plural = _("accounts")

    def __str__(self) -> str:
        return self.person.name

    @cached_property
    def grants(self) -> tuple[Grant, ...]:
        """The roles behind this account, read once a request."""
        rows = RoleGrant.objects.filter(person_id=self.person_id).values_list("role", "workshop_id")
        return tuple(Grant(Role(role), workshop_id) for role, workshop_id in rows)


class RoleGrantQuerySet(models.QuerySet["RoleGrant"]):
    def keys_to_the_club(self) -> RoleGrantQuerySet:
        """Coordinators of every workshop who can sign in: without one nobody could give a role again."""
        return self.filter(role=Role.COORDINATOR, workshop=None, person__account__is_active=True)


class RoleGrant(models.Model):
    """A role a person holds, in one workshop or in every workshop."""

    ROLES = (
        (Role.COORDINATOR.value, _("coordinator")),
        (Role.INSTRUCTOR.value, _("instructor")),
        (Role.HELPER.value, _("helper")),
        (Role.SAFETY_OFFICER.value, _("safety officer")),
        (Role.TREASURER.value, _("treasurer")),
        (Role.STUDENT.value, _("student")),
    )

    person = models.ForeignKey(Person, models.CASCADE, related_name="role_grants", verbose_name=_("person"))
    role = models.CharField(_("role"), max_length=20, choices=ROLES)
    # PROTECT: a role whose workshop merely vanished would hold in every workshop.
    workshop = models.ForeignKey(
        "club.Workshop",
        models.PROTECT,
        null=True,
        blank=True,
        related_name="role_grants",
        verbose_name=_("workshop"),
    )

    objects = RoleGrantQuerySet.as_manager()

    class Meta:
        ordering = ("pk",)
        verbose_name = _("role")
        verbose_name_plural = _("roles")
        constraints = (
            models.UniqueConstraint(fields=("person", "role", "workshop"), name="role_once_in_a_workshop"),
            models.UniqueConstraint(
                fields=("person", "role"), condition=Q(workshop=None), name="role_once_in_every_workshop"
            ),
            models.CheckConstraint(condition=Q(role__in=[role.value for role in Role]), name="role_is_known"),
        )

    def __str__(self) -> str:
        if self.workshop is None:
            return self.get_role_display()
        return f"{self.get_role_display()}, {self.workshop}"
