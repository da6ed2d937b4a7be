from django.contrib import admin

from instruments import models

admin.site.register(
    [
        models.Instrument,
        models.Keyboard,
        models.Division,
        models.Stop,
        models.Tremulant,
        models.Coupler,
        models.Place,
        models.Piston,
    ]
)
