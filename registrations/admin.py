from django.contrib import admin

from registrations import models

admin.site.register([models.Registration, models.Change, models.Drawn, models.Acceptance])
