package boundwright.web.meet;

import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.meet.Attempt;
import boundwright.meet.Entrant;
import boundwright.meet.Hand;
import boundwright.meet.KeptAttempt;
import boundwright.meet.Meet;
import boundwright.meet.MeetAim;
import boundwright.meet.MeetNow;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.track.Deed;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One meet as it goes: attempts by thumb, undo, ranks, and what the next attempt is for. */
public final class MeetHandler {
  private static final int MOST_OWN = 200;
  private static final String MILLISECONDS = "-?\\d{1,15}";
  private static final String TWICE = "That tap was kept already and was not kept twice.";

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public MeetHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The meet of the address. */
  static MeetSheet sheet(Context ctx, Workbench bench) {
    String id = ctx.pathParam("id");
    return (id.matches("\\d{1,18}") ? bench.meets().byId(Long.parseLong(id)) : Optional.<MeetSheet>empty())
        .orElseThrow(() -> new Turned(404, "No meet has the number " + id + ". Choose one from the list of meets."));
  }

  /** The page, or its lower part for the page's own script. */
  public void show(Context ctx) {
    MeetSheet sheet = sheet(ctx, bench);
    String kept = Form.text(ctx, "kept");
    MeetView.Said said = null;
    if (kept.equals("twice")) {
      said = new MeetView.Said(TWICE, null);
    } else if (Form.has(ctx, "undone")) {
      said = new MeetView.Said("Taken back.", null);
    } else {
      KeptAttempt last = last(sheet);
      if (last != null && kept.equals(String.valueOf(last.id()))) {
        said = new MeetView.Said("Kept: " + MeetView.told(last, unit(), sheet.rules().measure()) + ".", last.id());
      }
    }
    answer(ctx, 200, sheet, Sent.NOTHING, said);
  }

  /** Keeps an attempt; on disk before the answer. */
  public void keep(Context ctx) {
    MeetSheet sheet = sheet(ctx, bench);
    try {
      Entrant who = entrant(ctx, sheet);
      Attempt attempt = read(ctx, who, sheet.event());
      String note = Form.text(ctx, "note");
      Hand hand = hand(ctx);
      Optional<Long> number = bench.once(Entries.token(ctx), () -> keep(sheet, who, attempt, note, hand));
      if (Pages.isPartial(ctx)) {
        MeetSheet now = sheet(ctx, bench);
        answer(ctx, 200, now, Sent.NOTHING, kept(now, who, attempt, number.isEmpty()));
      } else {
        ctx.redirect("/meet/" + sheet.id() + "?kept=" + number.map(String::valueOf).orElse("twice"), HttpStatus.SEE_OTHER);
      }
    } catch (RefusedException e) {
      answer(ctx, 422, sheet, Sent.of(ctx, String.valueOf(e.getMessage())), null);
    }
  }

  private static final String BESIDE = "Something else was kept of this attempt meanwhile. Both entries stand below: choose.";

  private MeetView.Said kept(MeetSheet now, Entrant who, Attempt attempt, boolean again) {
    KeptAttempt last = last(now);
    KeptAttempt stands = now.standing(who.id(), attempt.round()).orElse(null);
    if (last == null) {
      return new MeetView.Said(TWICE, null);
    }
    if (!again && stands != null && !stands.attempt().equals(attempt)) {
      return new MeetView.Said(BESIDE, null);
    }
    // a phone that lost the first answer and sent again reads that its attempt is kept
    return new MeetView.Said("Kept: " + MeetView.told(last, unit(), now.rules().measure()) + "." + (again ? " " + TWICE : ""), last.id());
  }

  /** Where the very same counts already, nothing is added. */
  private long keep(MeetSheet sheet, Entrant who, Attempt attempt, String note, Hand hand) {
    MeetSheet now = bench.meets().byId(sheet.id()).orElse(sheet);
    Optional<KeptAttempt> same = now.standing(who.id(), attempt.round()).filter(there -> there.attempt().equals(attempt));
    return same.map(KeptAttempt::id).orElseGet(() -> bench.meets().add(sheet.id(), who.id(), attempt, note, hand).id());
  }

  /**
   * What the page had shown, and when the attempt was entered: {@code upto} is the number of the newest attempt on the page,
   * {@code own} the tokens of what the same phone entered since, {@code at} the phone's clock when it was entered, {@code offset} how
   * far the program's clock was ahead of it then (if the phone knew), {@code sent} the phone's clock when it was sent, all in ms.
   */
  private Hand hand(Context ctx) {
    String upTo = Form.text(ctx, "upto");
    List<Long> own = new ArrayList<>();
    for (String token : Form.text(ctx, "own").split(",", MOST_OWN)) {
      if (Deed.isToken(token)) {
        bench.taken(token).ifPresent(own::add);
      }
    }
    return new Hand(upTo.matches("\\d{1,18}") ? Long.parseLong(upTo) : Long.MAX_VALUE, own, at(ctx));
  }

  private Instant at(Context ctx) {
    Instant now = bench.clock().instant();
    String at = Form.text(ctx, "at");
    String offset = Form.text(ctx, "offset");
    String sent = Form.text(ctx, "sent");
    if (!at.matches(MILLISECONDS)) {
      return now;
    }
    long ahead_ms = offset.matches(MILLISECONDS) ? Long.parseLong(offset) : sent.matches(MILLISECONDS) ? now.toEpochMilli() - Long.parseLong(sent) : 0;
    Instant entered = Instant.ofEpochMilli(Long.parseLong(at) + ahead_ms);
    return entered.isAfter(now) ? now : entered;
  }

  /** The coach's choice between two entries of an attempt. */
  public void choose(Context ctx) {
    MeetSheet sheet = sheet(ctx, bench);
    try {
      String holds = Form.text(ctx, "holds");
      bench.once(
          Entries.token(ctx),
          () -> {
            bench.meets().choose(sheet.id(), Entries.number(ctx), holds.equals("beside"));
            return 0;
          });
      if (Pages.isPartial(ctx)) {
        answer(ctx, 200, sheet(ctx, bench), Sent.NOTHING, new MeetView.Said("Chosen.", null));
      } else {
        ctx.redirect("/meet/" + sheet.id(), HttpStatus.SEE_OTHER);
      }
    } catch (RefusedException e) {
      answer(ctx, 422, sheet(ctx, bench), Sent.of(ctx, String.valueOf(e.getMessage())), null);
    }
  }

  /** Takes the newest attempt back, if it still is the one that the page showed. */
  public void undo(Context ctx) {
    MeetSheet sheet = sheet(ctx, bench);
    KeptAttempt last = last(sheet);
    String asked = ctx.pathParam("number");
    boolean there = last != null && asked.equals(String.valueOf(last.id()));
    if (there) {
      // numbers of attempts are never given twice: sent again, it takes nothing else back
      bench.meetDesk().undo(sheet.id());
    }
    if (Pages.isPartial(ctx)) {
      String said =
          there && last != null
              ? "Taken back: " + MeetView.told(last, unit(), sheet.rules().measure()) + "."
              : "Nothing was taken back: that attempt is not the newest any more.";
      answer(ctx, 200, sheet(ctx, bench), Sent.NOTHING, new MeetView.Said(said, null));
    } else {
      ctx.redirect("/meet/" + sheet.id() + (there ? "?undone=1" : ""), HttpStatus.SEE_OTHER);
    }
  }

  /** Takes an attempt out, whichever it is. */
  public void removeAttempt(Context ctx) {
    MeetSheet sheet = sheet(ctx, bench);
    bench.meets().removeAttempt(sheet.id(), Entries.number(ctx));
    ctx.redirect("/meet/" + sheet.id() + "?undone=1", HttpStatus.SEE_OTHER);
  }

  private static Entrant entrant(Context ctx, MeetSheet sheet) {
    String id = Form.text(ctx, "entrant");
    return (id.matches("\\d{1,18}") ? sheet.entrant(Long.parseLong(id)) : Optional.<Entrant>empty())
        .orElseThrow(() -> new RefusedException("The athlete is not on the list of this meet. Choose one from the list."));
  }

  private Attempt read(Context ctx, Entrant who, Event event) {
    LengthUnit unit = unit();
    Attempt.Result result = Form.oneOf(Attempt.Result.class, "result", Form.text(ctx, "result"));
    boolean valid = result == Attempt.Result.VALID;
    String distance = Form.text(ctx, "distance");
    String wind = Form.text(ctx, "wind");
    String gap = Form.text(ctx, "gap");
    String shift = Form.text(ctx, "shift");
    Double at = gap.isEmpty() || result == Attempt.Result.PASS ? null : (Double) unit.readSmall("board gap", gap);
    if (at != null && result == Attempt.Result.FOUL) {
      // a foul is over the line, whichever way its size was written
      at = -Math.abs(at);
    }
    return new Attempt(
        event,
        who.name(),
        Form.whole("round", Form.text(ctx, "round")),
        result,
        valid && !distance.isEmpty() ? (Double) unit.read("distance", distance) : null,
        wind.isEmpty() || result == Attempt.Result.PASS ? null : (Double) Form.number("wind", wind),
        at,
        shift.isEmpty() || result == Attempt.Result.PASS ? 0 : unit.readSmall("shift of the start mark", shift));
  }

  private void answer(Context ctx, int status, MeetSheet sheet, Sent sent, MeetView.@Nullable Said said) {
    MeetNow now = bench.meetDesk().now(sheet);
    List<Athlete> ours = bench.athletes().all();
    Athlete chosen = chosen(ctx, now, ours);
    MeetAim aim = chosen == null ? null : bench.meetDesk().aim(sheet, chosen);
    MeetView view = new MeetView(now, unit(), ours, chosen, aim, sent, gate.fresh(), said, bench.meets().besides(sheet.id()), bench.clock());
    pages.show(ctx, status, Pages.isPartial(ctx) ? "meet/work" : "meet/meet", sheet.name(), "meet", view);
  }

  /** Of ours on the list: the one asked for, or who jumps next in the order of the round, or the first. */
  private static @Nullable Athlete chosen(Context ctx, MeetNow now, List<Athlete> ours) {
    String asked = ctx.queryParam("for");
    Meet meet = now.meet();
    if (meet == null) {
      return null;
    }
    Athlete first = null;
    Athlete next = null;
    int nextAt = Integer.MAX_VALUE;
    for (Athlete athlete : ours) {
      Entrant entrant = now.sheet().entrantOf(athlete.id()).orElse(null);
      if (entrant == null) {
        continue;
      }
      if (String.valueOf(athlete.id()).equals(asked)) {
        return athlete;
      }
      first = first == null ? athlete : first;
      Integer round = now.round();
      int at = now.order().indexOf(entrant.name());
      if (round != null && at >= 0 && at < nextAt && meet.attempt(entrant.name(), round) == null) {
        next = athlete;
        nextAt = at;
      }
    }
    return next == null ? first : next;
  }

  private static @Nullable KeptAttempt last(MeetSheet sheet) {
    List<KeptAttempt> all = sheet.attempts();
    return all.isEmpty() ? null : all.get(all.size() - 1);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }
}
