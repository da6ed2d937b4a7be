from django.core.exceptions import ValidationError
from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.urls import reverse

from instruments.compass import CompassError, parse_compass
from instruments.organ import Coupling, Half, KeyboardKind
from instruments.pitch import LengthError, parse_length
from instruments.tone import Construction, Family


def choices_of(words: type) -> list[tuple[str, str]]:
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
    coupling = models.CharField(
        max_length=10, choices=choices_of(Coupling), default=Coupling.DIRECT
    )
    accessories = models.JSONField(default=list, blank=True)
    notes = models.TextField(max_length=8000, blank=True)
    knobs_move = models.BooleanField(null=True, blank=True)
    levels = models.PositiveIntegerField(
        "memory levels", default=0, validators=[MaxValueValidator(100_000)]
    )
    sequencer = models.BooleanField(default=False)
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


class KeyboardQuerySet(models.QuerySet["Keyboard"]):
    def from_the_top(self) -> "KeyboardQuerySet":
        """As they lie at the console; those of which nobody has said it come last."""
        return self.order_by(models.F("from_top").asc(nulls_last=True), "position", "pk")


class Keyboard(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="keyboards")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    kind = models.CharField(max_length=10, choices=choices_of(KeyboardKind))
    compass = models.CharField(max_length=60, validators=[validate_compass])
    position = models.PositiveIntegerField(default=0)
    from_top = models.PositiveSmallIntegerField(null=True, blank=True, editable=False)

    objects = KeyboardQuerySet.as_manager()

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
        Keyboard, models.RESTRICT, null=True, blank=True, related_name="divisions"
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


class StopQuerySet(models.QuerySet["Stop"]):
    def named(self, words: str) -> "StopQuerySet":
        """Stops in whose name every word occurs."""
        found = self
        for word in words.split()[:8]:
            found = found.filter(name__icontains=word)
        return found

    def of_family(self, family: str) -> "StopQuerySet":
        return self.filter(family=family) if family else self

    def on(self, division: str) -> "StopQuerySet":
        """Stops of the divisions of this name, on every organ."""
        return self.filter(division__name__iexact=division) if division else self


class Stop(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="stops")
    division = models.ForeignKey(Division, models.CASCADE, related_name="stops")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    length = models.CharField(max_length=12, blank=True, validators=[validate_length])
    ranks = models.PositiveIntegerField(
        default=1, validators=[MinValueValidator(1), MaxValueValidator(60)]
    )
    family = models.CharField(max_length=12, choices=choices_of(Family))
    construction = models.CharField(
        max_length=16, choices=choices_of(Construction), default=Construction.OPEN
    )
    compass = models.CharField(max_length=60, blank=True, validators=[validate_compass])
    composition = models.JSONField(default=list, blank=True)
    rank = models.CharField(max_length=120, blank=True)
    borrowed_from = models.CharField(max_length=120, blank=True)
    half = models.CharField(max_length=6, blank=True, choices=choices_of(Half))
    position = models.PositiveIntegerField(default=0)

    objects = StopQuerySet.as_manager()

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
