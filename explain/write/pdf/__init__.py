"""Pages and books on paper, tagged (PDF/UA-1): the only folder that knows WeasyPrint, ziamath and pydyf."""
