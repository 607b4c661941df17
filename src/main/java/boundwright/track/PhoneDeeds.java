package boundwright.track;

import boundwright.flight.Rep;
import boundwright.flight.RepChanges;
import boundwright.quantity.RefusedException;
import boundwright.technique.FaultTick;
import boundwright.track.KeptTap.Kind;
import boundwright.track.TrackDesk.Brought;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what phones did, once each. What is said of a rep holds whenever it comes: before the rep, it waits for it (a rep that was taken
 * back stays away, one that was handed over comes to the athlete who did it); after the rep was taken back, it changes nothing. Of two
 * that say different things of one rep, the one that comes later holds; taken back is taken back.
 */
final class PhoneDeeds {
  private final RepChanges changes;
  private final TapLedger taps;
  private final Clock clock;

  PhoneDeeds(RepChanges changes, TapLedger taps, Clock clock) {
    this.changes = changes;
    this.taps = taps;
    this.clock = clock;
  }

  List<Brought> keep(List<Deed> deeds) {
    List<Brought> out = new ArrayList<>(deeds.size());
    for (Deed deed : deeds) {
      try {
        out.add(changes.step(() -> keep(deed)));
      } catch (RefusedException e) {
        out.add(new Brought(deed.token(), Set.of(deed.athleteId()), false, String.valueOf(e.getMessage())));
      }
    }
    return List.copyOf(out);
  }

  private Brought keep(Deed deed) {
    Optional<KeptTap> before = taps.of(deed.token());
    if (before.isPresent()) {
      Set<Long> whose = new TreeSet<>(List.of(deed.athleteId(), before.get().athleteId()));
      rep(before.get().repId()).ifPresent(r -> whose.add(r.athleteId()));
      return new Brought(deed.token(), whose, true, null);
    }
    Set<Long> whose = new TreeSet<>(Set.of(deed.athleteId()));
    if (deed instanceof Deed.Done done) {
      whose.add(done(done));
    } else if (deed instanceof Deed.TakenBack back) {
      whose.addAll(said(back, Kind.UNDO, back.of(), null));
    } else if (deed instanceof Deed.HandedOver hand) {
      whose.add(hand.to());
      whose.addAll(said(hand, Kind.HAND, hand.of(), String.valueOf(hand.to())));
    } else if (deed instanceof Deed.LookedAt look) {
      FaultTick.parseAll(look.faults());
      whose.addAll(said(look, Kind.LOOK, look.of(), look.looked() ? String.join(";", look.faults()) : NOT_LOOKED_AT));
    }
    return new Brought(deed.token(), whose, false, null);
  }

  private static final String NOT_LOOKED_AT = "-";

  /** Keeps the rep and what was said of it before it came; answers whose it is then. */
  private long done(Deed.Done done) {
    List<KeptTap> waiting = taps.about(done.token());
    Rep rep = done.rep().on(done.made().day(clock.instant(), clock.getZone()));
    if (waiting.stream().anyMatch(t -> t.kind() == Kind.UNDO)) {
      taps.keep(new KeptTap(done.token(), Kind.REP, rep.athleteId(), null, null, null, clock.instant(), done.made()));
      return rep.athleteId();
    }
    Rep kept = changes.add(rep);
    taps.keep(new KeptTap(done.token(), Kind.REP, kept.athleteId(), kept.id(), null, null, clock.instant(), done.made()));
    for (KeptTap t : waiting) {
      try {
        changes.step(() -> apply(t.kind(), t.said(), changes.find(kept.id()).orElse(kept)));
      } catch (RefusedException ignored) {
        // a look that does not fit the rep never keeps the rep away
      }
    }
    return changes.find(kept.id()).orElse(kept).athleteId();
  }

  /** Keeps what is said of a rep and does it where the rep is there; answers whose log it changed. */
  private Set<Long> said(Deed deed, Kind kind, String of, @Nullable String said) {
    Long about = Deed.isToken(of) ? taps.of(of).filter(t -> t.kind() == Kind.REP).map(KeptTap::repId).orElse(null) : (Long) Long.parseLong(of);
    taps.keep(new KeptTap(deed.token(), kind, deed.athleteId(), about, of, said, clock.instant(), deed.made()));
    Optional<Rep> rep = rep(about);
    if (rep.isEmpty()) {
      return Set.of();
    }
    if (!Deed.isToken(of)) {
      ofItsDay(rep.get(), deed.made().day(clock.instant(), clock.getZone()));
    }
    apply(kind, said, rep.get());
    return Set.of(rep.get().athleteId());
  }

  /** A number can be guessed, a token cannot; a phone may only log: what lies longer back than the session, midnight included, is changed on the athlete's own page. */
  private static void ofItsDay(Rep rep, LocalDate day) {
    if (Math.abs(ChronoUnit.DAYS.between(rep.date(), day)) > 1) {
      throw new RefusedException(
          "The rep is of " + rep.date() + " and this was entered on " + day + "; at the runway only what is of the same session is changed."
              + " Change it on the athlete's page.");
    }
  }

  private Optional<Rep> rep(@Nullable Long id) {
    return id == null ? Optional.empty() : changes.find(id);
  }

  private long apply(Kind kind, @Nullable String said, Rep rep) {
    switch (kind) {
      case UNDO -> changes.remove(rep);
      case HAND -> {
        long to = Long.parseLong(String.valueOf(said));
        if (to != rep.athleteId()) {
          changes.hand(rep, to);
          taps.hand(rep.id(), to);
        }
      }
      case LOOK -> look(rep, String.valueOf(said));
      case REP -> throw new IllegalStateException("a rep says nothing of another");
    }
    return rep.id();
  }

  private void look(Rep rep, String said) {
    boolean looked = !said.equals(NOT_LOOKED_AT);
    List<String> faults = looked && !said.isEmpty() ? List.of(said.split(";", -1)) : List.of();
    faults.forEach(f -> FaultTick.parse(f).within(rep.sequence()));
    changes.look(rep, looked, faults);
  }
}
