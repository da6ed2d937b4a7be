from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from instruments.consoles import PANEL_WORDS, Panel, PistonKind, Touch
from instruments.models.organ import Division, Instrument, choices_of


class Place(models.Model):
    """Where a control stands, by its id: it may be a stop, a tremulant or a coupler."""

    PANELS = [(panel.value, PANEL_WORDS[panel]) for panel in Panel]

    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="places")
    control = models.CharField(max_length=120)
    panel = models.CharField(max_length=5, choices=PANELS)
    column = models.PositiveSmallIntegerField(
        validators=[MinValueValidator(1), MaxValueValidator(99)]
    )
    row = models.PositiveSmallIntegerField(validators=[MinValueValidator(1), MaxValueValidator(99)])

    class Meta:
        ordering = ["panel", "column", "row"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "control"], name="control_placed_once"),
            models.UniqueConstraint(
                fields=["instrument", "panel", "column", "row"], name="place_taken_once"
            ),
            models.CheckConstraint(
                condition=models.Q(column__gte=1, row__gte=1), name="place_counts_from_one"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.control}: {self.panel} {self.column}.{self.row}"


class Piston(models.Model):
    instrument = models.ForeignKey(Instrument, models.CASCADE, related_name="pistons")
    slug = models.CharField(max_length=120)
    name = models.CharField(max_length=200)
    kind = models.CharField(
        max_length=10, choices=choices_of(PistonKind), default=PistonKind.GENERAL
    )
    division = models.ForeignKey(
        Division, models.CASCADE, null=True, blank=True, related_name="pistons"
    )
    control = models.CharField(max_length=120, blank=True)
    touch = models.CharField(max_length=13, choices=choices_of(Touch), default=Touch.THUMB)
    position = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["position", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["instrument", "slug"], name="piston_slug_once"),
            models.CheckConstraint(
                condition=models.Q(kind="general", division=None, control="")
                | (models.Q(kind="divisional", control="") & ~models.Q(division=None))
                | (models.Q(kind="reversible", division=None) & ~models.Q(control="")),
                name="piston_moves_what_its_kind_moves",
            ),
        ]

    def __str__(self) -> str:
        return self.name
