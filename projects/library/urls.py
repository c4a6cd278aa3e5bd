from __future__ import annotations

from django.urls import path

from projects.library.views import library, lifecycle

app_name = "projects"

urlpatterns = [
    path("", library.project_list, name="list"),
    path("<slug:key>/next-edition/", lifecycle.next_edition, name="next_edition"),
    path("<slug:key>/draft/keep/", lifecycle.keep, name="keep"),
    path("<slug:key>/draft/throw-away/", lifecycle.throw_away, name="throw_away"),
]
