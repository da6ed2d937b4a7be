from django.db import models
from django.urls import reverse

from instruments.models import Instrument
from registrations.combination import Player, Texture
from services.models import Item, Person


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

    def accept(self, rule: str, fingerprint: str, reason: str, by: Person | None) -> None:
        """Keep that a finding is meant; a second time, with another reason, replaces the first."""
        self.acceptances.update_or_create(
            fingerprint=fingerprint, defaults={"rule": rule, "reason": reason, "accepted_by": by}
        )

    def take_acceptance_back(self, fingerprint: str) -> None:
        """Let a finding that was meant be one again; nothing happens where it was not."""
        self.acceptances.filter(fingerprint=fingerprint).delete()


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


class Acceptance(models.Model):
    """The director's word that a finding of a change is meant.

    The fingerprint is that of its rule and evidence (registrations/acceptance.py): with other
    evidence the finding comes back.
    """

    change = models.ForeignKey(Change, models.CASCADE, related_name="acceptances")
    rule = models.CharField(max_length=60)
    fingerprint = models.CharField(max_length=32)
    reason = models.CharField("why it is meant", max_length=300)
    accepted_by = models.ForeignKey(
        Person, models.SET_NULL, null=True, blank=True, related_name="acceptances"
    )
    at = models.DateTimeField("accepted at", auto_now_add=True)

    class Meta:
        ordering = ["at", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["change", "fingerprint"], name="finding_accepted_once"),
            models.CheckConstraint(
                condition=~models.Q(reason=""), name="finding_accepted_with_a_reason"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.rule}: {self.reason}"
