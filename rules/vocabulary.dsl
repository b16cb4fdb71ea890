# The sentences a rule may be written in. Quoted words are names from the catalog, the
# parameters or a pattern sheet; the build turns "band too long" into the id band-too-long.
# {…} stands for such a name.

# --- when: the fitting ---------------------------------------------------------------------
[when]in any fitting=AnyFitting()
[when]the wearer reports "{sign}" at the "{place}"=Sign(id == "{sign}", present == true, place == "{place}")
[when]the wearer reports "{sign}" on one side only=Sign(id == "{sign}", present == true, oneSided == true)
[when]the wearer reports "{sign}" "{time}"=Sign(id == "{sign}", present == true, times contains "{time}")
[when]the wearer reports "{sign}"=Sign(id == "{sign}", present == true)
[when]the wearer denies "{sign}"=Sign(id == "{sign}", present == false)
[when]the wearer is "{circumstance}"=Circumstance(id == "{circumstance}")
[when]the choice "{choice}" is "{option}"=Choice(id == "{choice}", option == "{option}")
[when]the pattern is "{trait}"=Trait(id == "{trait}")
[when]"{adjustment}" was tried and it was "{outcome}"=Earlier(adjustment == "{adjustment}", outcome == "{outcome}")
[when]the last change was tried and it was "{outcome}"=Earlier(last == true, outcome == "{outcome}")

# --- when: numbers, always against a named parameter ------------------------------------------
[when]the "{figure}" is below "{limit}"=Figure(id == "{figure}", value < parameter("{limit}"))
[when]the "{figure}" is above "{limit}"=Figure(id == "{figure}", value > parameter("{limit}"))
[when]the "{figure}" is at least "{limit}"=Figure(id == "{figure}", value >= parameter("{limit}"))
[when]the "{figure}" is at most "{limit}"=Figure(id == "{figure}", value <= parameter("{limit}"))

# --- when: what other rules have judged ------------------------------------------------------
[when]it is found that "{finding}"=Finding(id == "{finding}", holds == true)
[when]it is found not so that "{finding}"=Finding(id == "{finding}", holds == false)

# --- when: after weighing -------------------------------------------------------------------
[when]"{cause}" is likely=InPlay(cause == "{cause}", likely == true)

# --- then: judge ------------------------------------------------------------------------------
[then]it is found that "{finding}"=book.found(drools, "{finding}", true);
[then]it is found not so that "{finding}"=book.found(drools, "{finding}", false);

# --- then: weigh ------------------------------------------------------------------------------
[then]"{cause}" nearly always shows as "{sign}"=book.shows(drools, "{cause}", "nearly-always", "{sign}");
[then]"{cause}" usually shows as "{sign}"=book.shows(drools, "{cause}", "usually", "{sign}");
[then]"{cause}" often shows as "{sign}"=book.shows(drools, "{cause}", "often", "{sign}");
[then]"{cause}" sometimes shows as "{sign}"=book.shows(drools, "{cause}", "sometimes", "{sign}");
[then]"{cause}" rarely shows as "{sign}"=book.shows(drools, "{cause}", "rarely", "{sign}");
[then]"{cause}" never shows as "{sign}"=book.shows(drools, "{cause}", "never", "{sign}");
[then]"{adjustment}" fully cures "{cause}"=book.cures(drools, "{adjustment}", "fully", "{cause}");
[then]"{adjustment}" largely cures "{cause}"=book.cures(drools, "{adjustment}", "largely", "{cause}");
[then]"{adjustment}" partly cures "{cause}"=book.cures(drools, "{adjustment}", "partly", "{cause}");
[then]"{adjustment}" worsens "{cause}"=book.worsens(drools, "{adjustment}", "{cause}");
[then]"{adjustment}" brought "{cause}"=book.brought(drools, "{adjustment}", "{cause}");

# --- then: advise -----------------------------------------------------------------------------
[then]show the caution "{caution}"=book.caution(drools, "{caution}");
[then]advise no tightening=book.noTightening(drools);
[then]take up slack only because "{reason}"=book.slackOnly(drools, "{reason}");
[then]first of all "{adjustment}"=book.firstOfAll(drools, "{adjustment}");
[then]hold back "{adjustment}" because "{reason}"=book.holdBack(drools, "{adjustment}", "{reason}");
[then]put "{adjustment}" in place of "{other}"=book.replace(drools, "{adjustment}", "{other}");
