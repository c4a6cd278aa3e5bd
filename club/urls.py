from __future__ import annotations

from django.urls import include, path

urlpatterns = [
    path("", include("club.home.urls")),
    path("classes/", include("club.classes.urls")),
    path("lathes/", include("club.lathes.urls")),
    path("people/", include("club.people.urls")),
    path("projects/", include("projects.library.urls")),
    path("stores/", include("club.stores.urls")),
]
