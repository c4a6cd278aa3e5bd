from __future__ import annotations

from django.urls import path

from club.people.views import own, persons, roles, sign_ins, signing_in

app_name = "people"

urlpatterns = [
    path("", persons.person_list, name="list"),
    path("new/", persons.new, name="new"),
    path("sign-in/", signing_in.sign_in, name="sign_in"),
    path("sign-out/", signing_in.sign_out, name="sign_out"),
    path("me/", own.me, name="me"),
    path("me/password/", own.password, name="password"),
    path("<int:pk>/", persons.person, name="person"),
    path("<int:pk>/mend/", persons.mend, name="mend"),
    path("<int:pk>/roles/give/", roles.give, name="give_role"),
    path("<int:person_pk>/roles/<int:pk>/withdraw/", roles.withdraw, name="withdraw_role"),
    path("<int:pk>/sign-in/give/", sign_ins.give, name="give_sign_in"),
    path("<int:pk>/sign-in/password/", sign_ins.renew, name="renew_password"),
    path("<int:pk>/sign-in/bar/", sign_ins.bar, name="bar_sign_in"),
    path("<int:pk>/sign-in/open/", sign_ins.open_again, name="open_sign_in"),
]
