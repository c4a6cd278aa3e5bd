"""What the pages of woods and finishes call things."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from projects.library.domain.finishes import FinishProperty
from projects.library.domain.species import WoodGroup

# Every wood of the tables has one of these; only a wood that is in none has no group.
GROUPS: Mapping[WoodGroup, Promise] = {
    WoodGroup.HARDWOOD: _("hardwood"),
    WoodGroup.SOFTWOOD: _("softwood"),
}
PROPERTIES: Mapping[FinishProperty, Promise] = {
    FinishProperty.DRIES_BY_OXIDATION: _("dries by oxidation"),
    FinishProperty.CONTAINS_TREE_NUT: _("contains tree nut"),
    FinishProperty.FLAMMABLE_SOLVENT: _("flammable solvent"),
}
