package boundwright.clip.day;

import boundwright.clip.day.WhoWasIt.Proposal;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.reading.Setup;
import boundwright.clip.session.Clothes;
import boundwright.flight.Rep;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A session's film as it stands.
 *
 * @param film what is kept of it
 * @param rows its reps in order
 * @param bytes what it holds on the disk, stills and film
 * @param freeBytes what the disk has left
 * @param keepFilms whether films are kept when the coach is through with them
 * @param matched whether the taps of the day fit the film
 */
public record SessionSheet(SessionFilm film, List<Row> rows, long bytes, long freeBytes, boolean keepFilms, boolean matched) {
  /** Copies the rows. */
  public SessionSheet {
    rows = List.copyOf(rows);
  }

  /**
   * Somebody who may have been it.
   *
   * @param athleteId who
   * @param sure how sure, 0 to 1
   */
  public record Maybe(long athleteId, double sure) {}

  /**
   * A tap that may be this rep.
   *
   * @param tap which
   * @param sure how sure, 0 to 1
   */
  public record MaybeTap(TappedRep tap, double sure) {}

  /**
   * One rep.
   *
   * @param number in the film, from 1; 0 for one that was set aside
   * @param rep as it is kept
   * @param maybe who it may have been, the likeliest first; empty once somebody is named
   * @param tap the tap that it may be, or null
   * @param clip its reading, or null
   * @param seen the rep as it would go into the log, or null
   * @param notYet why it cannot be logged yet, or empty
   */
  public record Row(
      int number, SessionRep rep, List<Maybe> maybe, @Nullable MaybeTap tap, @Nullable ClipRecord clip, @Nullable Rep seen, String notYet) {
    /** Copies the list. */
    public Row {
      maybe = List.copyOf(maybe);
    }

    /** Whether it is in the log. */
    public boolean logged() {
      return clip != null && clip.repId() != 0;
    }

    /** Whether its reading waits or runs. */
    public boolean working() {
      return clip != null && (clip.state() == ClipState.WAITING || clip.state() == ClipState.READING);
    }
  }

  static SessionSheet of(SessionFilm film, SessionRepository sessions, ClipDesk clips, Previews previews, Setup marks, SessionFiles files) {
    List<SessionRep> reps = sessions.reps(film.id());
    List<SessionRep> counted = reps.stream().filter(r -> !r.setAside()).toList();
    Map<Long, MaybeTap> taps = taps(film, reps, sessions);
    List<WhoWasIt.Known> known = new ArrayList<>();
    for (SessionRep r : counted) {
      MaybeTap tap = taps.get(r.id());
      known.add(
          new WhoWasIt.Known(
              film.done() ? Clothes.UNKNOWN : r.cut().clothes(), r.athleteId(), tap == null ? null : (Long) tap.tap.athleteId(), tap == null ? 0 : tap.sure));
    }
    List<Long> order = order(film, sessions);
    List<Row> rows = new ArrayList<>();
    for (SessionRep r : reps) {
      int at = counted.indexOf(r);
      List<Proposal> maybe =
          at < 0 || r.athleteId() != null || order.isEmpty() ? List.of() : WhoWasIt.of(known, at, order, SessionDesk.PROPOSED);
      rows.add(row(r, at + 1, maybe, taps.get(r.id()), clips, previews, marks));
    }
    return new SessionSheet(film, rows, files.bytes(film.id()), files.free(), clips.keepFilms(), !taps.isEmpty());
  }

  private static Row row(
      SessionRep r, int number, List<Proposal> maybe, @Nullable MaybeTap tap, ClipDesk clips, Previews previews, Setup marks) {
    ClipRecord clip = r.clipId() == 0 ? null : clips.clip(r.clipId());
    Previews.Preview preview = clip == null ? new Previews.Preview(null, "") : previews.of(clip, marks);
    return new Row(
        number, r, maybe.stream().map(p -> new Maybe(p.athleteId(), p.sure())).toList(), tap, clip, preview.seen(), preview.notYet());
  }

  /** Who is here, in the order of the day's taps as far as they go, then as the card has them. */
  private static List<Long> order(SessionFilm film, SessionRepository sessions) {
    List<Long> here = sessions.here(film.date());
    Set<Long> out = new LinkedHashSet<>();
    for (TappedRep t : sessions.taps(film.date())) {
      out.add(t.athleteId());
    }
    out.retainAll(new HashSet<>(here));
    out.addAll(here);
    return List.copyOf(out);
  }

  /** The taps that may be reps of a film, by the rep's number; those already given to a rep stay with it. */
  static Map<Long, MaybeTap> taps(SessionFilm film, List<SessionRep> reps, SessionRepository sessions) {
    List<SessionRep> counted = reps.stream().filter(r -> !r.setAside()).toList();
    List<TappedRep> taps = sessions.taps(film.date());
    Map<Long, MaybeTap> out = new LinkedHashMap<>();
    if (taps.isEmpty() || counted.isEmpty()) {
      return out;
    }
    Map<Long, TappedRep> byId = new HashMap<>();
    taps.forEach(t -> byId.put(t.repId(), t));
    double[] landings = counted.stream().mapToDouble(r -> r.cut().to_s()).toArray();
    double first = taps.get(0).at().toEpochMilli() / 1000.0;
    double[] times = taps.stream().mapToDouble(t -> t.at().toEpochMilli() / 1000.0 - first).toArray();
    List<@Nullable Long> who = new ArrayList<>();
    counted.forEach(r -> who.add(r.athleteId()));
    TapMatch match = TapMatch.of(landings, who, times, taps.stream().map(TappedRep::athleteId).toList());
    for (int i = 0; i < counted.size(); i++) {
      if (match.taps()[i] >= 0) {
        out.put(counted.get(i).id(), new MaybeTap(taps.get(match.taps()[i]), match.sure()[i]));
      }
    }
    for (SessionRep r : counted) {
      TappedRep given = byId.get(r.tapRepId());
      if (given != null) {
        out.put(r.id(), new MaybeTap(given, 1));
      }
    }
    return out;
  }
}
