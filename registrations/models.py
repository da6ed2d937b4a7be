from django.db import models
from django.urls import reverse

from instruments.models import Instrument
from registrations.combination import Player, Texture
from services.models import Item


class Registration(models.Model):
    item = models.OneToOneField(Item, models.CASCADE, related_name="registration")
    instrument = models.ForeignKey(
        Instrument, models.PROTECT, related_name="registrations", verbose_name="organ"
    )

    class Meta:
        ordering = ["item__position", "pk"]

    def __str__(self) -> str:
        return f"{self.item} on {self.instrument}"


class Change(models.Model):
    TEXTURES = [(one.value, one.value) for one in Texture]
    SOLO = [(one.value, f"{one.value} hand" if one != "feet" else "feet") for one in Player]

    registration = models.ForeignKey(Registration, models.CASCADE, related_name="changes")
    position = models.PositiveIntegerField(default=0)
    cue = models.CharField(
        max_length=200, help_text="Where it is set: Verse 3, bar 17, “at the words ...”."
    )
    right = models.CharField("right hand plays", max_length=120, blank=True)
    left = models.CharField("left hand plays", max_length=120, blank=True)
    feet = models.CharField("feet play", max_length=120, blank=True)
    texture = models.CharField(max_length=8, choices=TEXTURES, default=Texture.CHORDS)
    solo = models.CharField("solo is in the", max_length=8, choices=SOLO, default=Player.RIGHT)
    note = models.CharField(max_length=300, blank=True, help_text="Swell box, touch, who turns ...")

    class Meta:
        ordering = ["position", "pk"]

    def __str__(self) -> str:
        return self.cue

    def get_absolute_url(self) -> str:
        return reverse("change", args=[self.pk])


class Drawn(models.Model):
    """One control that is drawn in a change, named by its id on the organ.

    By id and not by row: a control may be removed from the organ and the change must still say so.
    """

    change = models.ForeignKey(Change, models.CASCADE, related_name="drawn")
    control = models.CharField(max_length=120)

    class Meta:
        verbose_name_plural = "drawn"
        constraints = [
            models.UniqueConstraint(fields=["change", "control"], name="control_drawn_once")
        ]

    def __str__(self) -> str:
        return self.control
