from django.core.exceptions import ValidationError
from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.urls import reverse

from instruments.compass import CompassError, parse_compass
from instruments.organ import Coupling, Half, KeyboardKind
from instruments.pitch import LengthError, parse_length
from instruments.tone import Construction, Family


def _choices(words: type) -> list[tuple[str, str]]:
    return [(word.value, word.value.replace("-", " ")) for word in words]  # type: ignore[attr-defined]


def validate_length(text: str) -> None:
    try:
        parse_length(text)
    except LengthError as error:
        raise ValidationError(str(error)) from error


def validate_compass(text: str) -> None:
    try:
        parse_compass(text)
    except CompassError as error:
        raise ValidationError(str(error)) from error


class Instrument(models.Model):
    name = models.CharField(max_length=200)
    place = models.CharField(max_length=200, blank=True)
    pitch_hz = models.FloatField(
        "pitch of a1 in hertz",
        default=440.0,
        validators=[MinValueValidator(300), MaxValueValidator(600)],
    )
    temperament = models.CharField(max_length=80, default="equal")
    coupling = models.CharField(max_length=10, choices=_choices(Coupling), default=Coupling.DIRECT)
    accessories = models.JSONField(default=list, blank=True)
    revision = models.PositiveIntegerField(default=1, editable=False)

    class Meta:
        ordering = ["name", "pk"]

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("instrument", args=[self.pk])

    def revise(self) -> None:
        """Count one more revision, so that what was worked out from the old one is done anew."""
        Instrument.objects.filter(pk=self.pk).update(revision=models.F("revision") + 1)


class Keyboard(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="keyboards")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    kind = models.CharField(max_length=10, choices=_choices(KeyboardKind))
    compass = models.CharField(max_length=60, validators=[validate_compass])
    position = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["position", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "slug"], name="keyboard_slug_once")
        ]

    def __str__(self) -> str:
        return self.name


class Division(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="divisions")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    keyboard = models.ForeignKey(
        Keyboard, models.PROTECT, null=True, blank=True, related_name="divisions"
    )
    enclosed = models.BooleanField(default=False)
    position = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["position", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "slug"], name="division_slug_once")
        ]

    def __str__(self) -> str:
        return self.name


class Stop(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="stops")
    division = models.ForeignKey(Division, models.CASCADE, related_name="stops")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    length = models.CharField(max_length=12, blank=True, validators=[validate_length])
    ranks = models.PositiveIntegerField(
        default=1, validators=[MinValueValidator(1), MaxValueValidator(60)]
    )
    family = models.CharField(max_length=12, choices=_choices(Family))
    construction = models.CharField(
        max_length=16, choices=_choices(Construction), default=Construction.OPEN
    )
    compass = models.CharField(max_length=60, blank=True, validators=[validate_compass])
    composition = models.JSONField(default=list, blank=True)
    rank = models.CharField(max_length=120, blank=True)
    borrowed_from = models.CharField(max_length=120, blank=True)
    half = models.CharField(max_length=6, blank=True, choices=_choices(Half))
    position = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["position", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "slug"], name="stop_slug_once"),
            models.CheckConstraint(condition=models.Q(ranks__gte=1), name="stop_has_a_rank"),
        ]

    def __str__(self) -> str:
        return f"{self.name} {self.length}".strip()


class Tremulant(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="tremulants")
    division = models.ForeignKey(Division, models.CASCADE, related_name="tremulants")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    position = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["position", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "slug"], name="tremulant_slug_once")
        ]

    def __str__(self) -> str:
        return self.name


class Coupler(models.Model):
    OCTAVES = [(16, "sub-octave (16)"), (8, "unison (8)"), (4, "octave (4)")]

    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="couplers")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    source = models.ForeignKey(Division, models.CASCADE, related_name="carried_by")
    target = models.ForeignKey(Keyboard, models.CASCADE, related_name="reached_by")
    octave = models.PositiveSmallIntegerField(choices=OCTAVES, default=8)
    unison_off = models.BooleanField(default=False)
    position = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["position", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "slug"], name="coupler_slug_once"),
            models.CheckConstraint(
                condition=models.Q(octave__in=[16, 8, 4]), name="coupler_octave_is_16_8_or_4"
            ),
        ]

    def __str__(self) -> str:
        return self.name
