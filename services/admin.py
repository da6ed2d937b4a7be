from django.contrib import admin

from services import models

admin.site.register([models.Person, models.Piece, models.Service, models.Item])
