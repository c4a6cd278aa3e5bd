from __future__ import annotations

from django.urls import path

from club.lathes.views import lathes, lists, workshops

app_name = "lathes"

urlpatterns = [
    path("", lathes.lathe_list, name="list"),
    path("new/", lathes.new, name="new"),
    path("measuring/", lathes.measuring, name="measuring"),
    path("bring-in/", lists.bring_in_list, name="import"),
    path("lathes.csv", lists.export, name="export"),
    path("<int:pk>/", lathes.lathe, name="lathe"),
    path("<int:pk>/mend/", lathes.mend, name="mend"),
    path("<int:pk>/condition/", lathes.condition, name="condition"),
    path("<int:pk>/remove/", lathes.remove, name="remove"),
    path("workshops/", workshops.workshop_list, name="workshops"),
    path("workshops/new/", workshops.new, name="workshop_new"),
    path("workshops/<int:pk>/", workshops.workshop, name="workshop"),
    path("workshops/<int:pk>/mend/", workshops.mend, name="workshop_mend"),
]
