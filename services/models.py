from datetime import date, timedelta

from django.conf import settings
from django.db import models
from django.urls import reverse
from django.utils.formats import date_format

from config.access import ROLE_WORDS, Role
from instruments.models import Instrument
from services.order import PieceKind


class Person(models.Model):
    ROLES = [(role.value, f"{role.value}: {ROLE_WORDS[role]}") for role in Role]

    user = models.OneToOneField(
        settings.AUTH_USER_MODEL, models.SET_NULL, null=True, blank=True, related_name="person"
    )
    name = models.CharField(max_length=200)
    role = models.CharField(max_length=10, choices=ROLES)

    class Meta:
        ordering = ["name", "pk"]
        verbose_name_plural = "people"

    def __str__(self) -> str:
        return self.name


class PieceQuerySet(models.QuerySet["Piece"]):
    def found_by(self, words: str) -> "PieceQuerySet":
        """Pieces in whose title, tune or composer every word occurs."""
        found = self
        for word in words.split()[:8]:
            found = found.filter(
                models.Q(title__icontains=word)
                | models.Q(tune__icontains=word)
                | models.Q(composer__icontains=word)
            )
        return found


class Piece(models.Model):
    KINDS = [(kind.value, kind.value) for kind in PieceKind]

    kind = models.CharField(max_length=12, choices=KINDS, default=PieceKind.HYMN)
    title = models.CharField(max_length=200, help_text="Of a hymn: its first line.")
    composer = models.CharField(max_length=200, blank=True)
    tune = models.CharField(max_length=120, blank=True)
    metre = models.CharField(max_length=60, blank=True, help_text="LM, CM, 8.7.8.7 D ...")
    key = models.CharField(max_length=20, blank=True, help_text="Eb major, c minor ...")
    verses = models.PositiveSmallIntegerField(default=0, help_text="0 where there are none.")
    source = models.CharField(
        "where its facts come from",
        max_length=200,
        blank=True,
        help_text="A book, or: from memory.",
    )

    objects = PieceQuerySet.as_manager()

    class Meta:
        ordering = ["title", "pk"]

    def __str__(self) -> str:
        return self.title


class ServiceQuerySet(models.QuerySet["Service"]):
    def in_week(self, monday: date) -> "ServiceQuerySet":
        return self.filter(day__gte=monday, day__lt=monday + timedelta(days=7))

    def on_or_after(self, day: date) -> "ServiceQuerySet":
        return self.filter(day__gte=day)


class Service(models.Model):
    day = models.DateField("date")
    starts = models.TimeField("time")
    title = models.CharField(max_length=200)
    church = models.CharField(max_length=200, blank=True)

    objects = ServiceQuerySet.as_manager()

    class Meta:
        ordering = ["day", "starts", "pk"]

    def __str__(self) -> str:
        return f"{self.title}, {date_format(self.day, 'l j F Y')}, {self.starts:%H:%M}"

    def get_absolute_url(self) -> str:
        return reverse("service", args=[self.pk])


class Item(models.Model):
    service = models.ForeignKey(Service, models.CASCADE, related_name="items")
    position = models.PositiveIntegerField(default=0)
    label = models.CharField(
        "place in the service", max_length=120, blank=True, help_text="Offertory hymn, Psalm ..."
    )
    piece = models.ForeignKey(Piece, models.PROTECT, related_name="items")
    instrument = models.ForeignKey(
        Instrument,
        models.PROTECT,
        null=True,
        blank=True,
        related_name="items",
        verbose_name="organ",
    )
    player = models.ForeignKey(Person, models.SET_NULL, null=True, blank=True, related_name="items")
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["position", "pk"]

    def __str__(self) -> str:
        return f"{self.label}: {self.piece}" if self.label else str(self.piece)
