"""Addresses: each app brings its own."""

from django.contrib import admin
from django.urls import include, path

from config import converters, views

converters.register()

urlpatterns = [
    path("", views.front, name="front"),
    path("sign-in/", views.sign_in, name="sign_in"),
    path("sign-out/", views.sign_out, name="sign_out"),
    path("welcome/<str:uid>/<str:token>/", views.welcome, name="welcome"),
    path("welcome/<str:uid>/<str:token>/in/", views.sign_in_once, name="sign_in_once"),
    path("password/", views.password, name="password"),
    path("password/choose/", views.choose_password, name="choose_password"),
    path("", include("services.urls")),
    path("", include("instruments.urls")),
    path("", include("registrations.urls")),
    path("admin/", admin.site.urls),
]
