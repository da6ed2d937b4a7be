"""Addresses: each app brings its own."""

from django.contrib import admin
from django.urls import include, path

urlpatterns = [
    path("", include("services.urls")),
    path("", include("instruments.urls")),
    path("", include("registrations.urls")),
    path("admin/", admin.site.urls),
]
