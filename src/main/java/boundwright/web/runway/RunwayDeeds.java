package boundwright.web.runway;

import boundwright.flight.Rep;
import boundwright.phone.Entry;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import boundwright.track.Deed;
import boundwright.track.Made;
import boundwright.track.TrackDesk;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Reads the lines that a phone sends and has each done; a line that cannot be read is answered for itself and holds nothing up. */
final class RunwayDeeds {
  /** Most lines that are taken at once (judgement: a squad's whole session). */
  static final int MOST_LINES = 500;

  private RunwayDeeds() {}

  /**
   * What became of the lines.
   *
   * @param answers one for each line, in order
   * @param athletes whose log changed, or is to be heard of again
   */
  record Outcome(List<Answer> answers, Set<Long> athletes) {}

  /**
   * What became of one line.
   *
   * @param token of the line, empty where none can be read
   * @param what {@code kept}, {@code again} or {@code refused}
   * @param why it was refused, or null
   */
  record Answer(String token, String what, @Nullable String why) {}

  /** Does them in order. */
  static Outcome bring(String body, TrackDesk track) {
    List<String> lines = body.lines().filter(l -> !l.isBlank()).toList();
    if (lines.size() > MOST_LINES) {
      throw new RefusedException("A phone sent " + lines.size() + " entries at once; the limit is " + MOST_LINES + ". Nothing was kept; send fewer at once.");
    }
    List<@Nullable Deed> read = new ArrayList<>();
    List<Answer> answers = new ArrayList<>();
    for (String line : lines) {
      try {
        read.add(deed(plain(Entry.parse(line))));
        answers.add(new Answer("", "", null));
      } catch (RefusedException e) {
        read.add(null);
        answers.add(new Answer(token(line), "refused", e.getMessage()));
      }
    }
    List<Deed> deeds = new ArrayList<>();
    read.forEach(
        d -> {
          if (d != null) {
            deeds.add(d);
          }
        });
    List<TrackDesk.Brought> brought = track.bring(deeds);
    Set<Long> athletes = new TreeSet<>();
    int at = 0;
    for (int i = 0; i < answers.size(); i++) {
      if (read.get(i) != null) {
        TrackDesk.Brought b = brought.get(at++);
        String refused = b.refused();
        answers.set(i, new Answer(b.token(), refused != null ? "refused" : b.again() ? "again" : "kept", refused));
        athletes.addAll(b.athletes());
      }
    }
    return new Outcome(List.copyOf(answers), athletes);
  }

  private static String token(String line) {
    for (String pair : line.split("&", -1)) {
      if (pair.matches("token=[0-9a-f]{32}")) {
        return pair.substring("token=".length());
      }
    }
    return "";
  }

  private static Entry plain(Entry e) {
    e.faults().forEach(PlainText::checked);
    return e;
  }

  private static Deed deed(Entry e) {
    Made made = new Made(Instant.ofEpochMilli(e.atMs()), e.offsetMs());
    return switch (e.kind()) {
      case REP -> new Deed.Done(e.token(), rep(e), made);
      case UNDO -> new Deed.TakenBack(e.token(), e.athleteId(), e.of(), made);
      case HAND -> new Deed.HandedOver(e.token(), e.athleteId(), e.of(), e.to(), made);
      case LOOK -> new Deed.LookedAt(e.token(), e.athleteId(), e.of(), e.looked(), e.faults(), made);
    };
  }

  /** The day is put in its place where the rep is kept. */
  private static Rep rep(Entry e) {
    return e.rep(LocalDate.EPOCH);
  }
}
