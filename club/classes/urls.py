from __future__ import annotations

from django.urls import path

from club.classes.views import people, planning

app_name = "classes"

urlpatterns = [
    path("", planning.class_list, name="list"),
    path("new/", planning.new, name="new"),
    path("<int:pk>/mend/", planning.mend, name="mend"),
    path("<int:pk>/cancel/", planning.cancel, name="cancel"),
    path("<int:pk>/sign-up/", people.sign_up, name="sign_up"),
    path("<int:pk>/people/<int:number>/", people.seat, name="seat"),
    path("<int:pk>/offer/", people.offer, name="offer"),
]
