package boundwright.web.season;

import boundwright.season.SeasonRepository.CalendarKey;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.SeasonRepository.Version;
import boundwright.season.calendar.CalendarAddresses;
import boundwright.season.calendar.SeasonCalendar;
import boundwright.store.Workbench;
import boundwright.store.calendar.CalendarFile;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** Calendars for whoever has their address: the address itself is the right, to read this calendar and nothing else. */
public final class CalendarHandler {
  private static final String ENDING = ".ics";

  private final Workbench bench;

  public CalendarHandler(Workbench bench) {
    this.bench = bench;
  }

  /** The calendar of an address; an address that was renewed or never given is answered like any page that is not there. */
  public void read(Context ctx) {
    String name = ctx.pathParam("secret");
    Optional<CalendarKey> key = name.endsWith(ENDING) ? CalendarAddresses.opens(bench.seasons(), name.substring(0, name.length() - ENDING.length())) : Optional.empty();
    Kept season = key.flatMap(k -> bench.seasons().byId(k.seasonId())).orElseThrow(() -> new Turned(404, "There is no calendar at this address (any more). Ask the coach for the new one."));
    Long athlete = key.get().athleteId();
    List<Version> versions = bench.seasons().versions(season.id());
    ZoneId zone = bench.clock().getZone();
    SeasonCalendar calendar = athlete == null ? SeasonCalendar.of(season, versions, zone) : SeasonCalendar.of(season, versions, athlete, zone);
    ctx.contentType(CalendarFile.MEDIA_TYPE);
    ctx.header("Content-Disposition", "inline; filename=\"season.ics\"");
    ctx.header("Cache-Control", "private, no-cache");
    ctx.result(CalendarFile.write(calendar, zone, bench.clock().instant()));
  }
}
