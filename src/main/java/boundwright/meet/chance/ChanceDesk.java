package boundwright.meet.chance;

import boundwright.approach.aim.AimDesk;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.full.FullRunAnswer;
import boundwright.approach.full.FullRunForecast;
import boundwright.athlete.Athlete;
import boundwright.inference.Normal;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.meet.MeetRepository;
import boundwright.meet.MeetSheet;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/** Says how likely an athlete is to reach a standard by a day, in the meets that are kept or told. */
public final class ChanceDesk {
  /** The same log gives the same chance on every machine. */
  private static final long SEED = 20_261_131L;
  /** Of the spread of a jump so much at least is not the board's (judgement). */
  private static final double LEAST_EFFECTIVE = 0.5;

  private final AimDesk aims;
  private final MeetRepository meets;

  /** Works on these. */
  public ChanceDesk(AimDesk aims, MeetRepository meets) {
    this.aims = aims;
    this.meets = meets;
  }

  /**
   * The chance.
   *
   * @param jumps what is believed of this athlete's jumps from the full run today
   * @param standard_m 3 to 19 m
   * @param by the last day, after today
   * @param told further meets; those of another day than the kept ones
   * @param wind how winds will be, or null where they are not counted
   * @throws RefusedException if the standard or the day make no sense; never for too few data
   */
  public ChanceAnswer answer(
      Athlete athlete, FullRunAnswer jumps, double standard_m, LocalDate by, List<MeetAhead> told, @Nullable LikelyWind wind, LocalDate today) {
    Event.TRIPLE_JUMP.jump("standard", standard_m);
    if (!by.isAfter(today)) {
      throw new RefusedException("The day " + by + " is not after today, " + today + ". Ask for a day that is still to come.");
    }
    List<MeetAhead> ahead = ahead(athlete, by, told, today);
    Optional<BoardSpread> board = aims.board(athlete, Event.TRIPLE_JUMP);
    DoubleFunction<AttemptLaw> law = sd -> board.map(b -> asInAim(b, sd)).orElseGet(() -> new AttemptLaw.Plain(AttemptLaw.USUAL_FOULS, sd));
    boolean own = board.isPresent();
    double fouls = law.apply(0.2).fouls();
    FullRunForecast forecast = jumps.asked();
    if (forecast == null || ahead.isEmpty()) {
      String why = forecast == null
          ? jumps.missing()
          : "No meet of " + athlete.name() + " is kept from tomorrow to " + by + ". Put the athlete on the list of one, or name the days of meets.";
      return new ChanceAnswer(standard_m, by, null, jumps, fouls, own, wind, why);
    }
    StandardChance chance = StandardChance.of(forecast, today, standard_m, ahead, law, wind, MeasureRule.CENTIMETRE, new Random(SEED));
    return new ChanceAnswer(standard_m, by, chance, jumps, fouls, own, wind, null);
  }

  /** The board as the athlete meets it now; what the board does not spread of a legal jump is the effective distance's. */
  private static AttemptLaw asInAim(BoardSpread board, double jumpSd_m) {
    double mean = board.mean_m().p50();
    double sd = board.sd_m().p50();
    double k = mean / sd;
    double h = Normal.density(k) / Math.max(Normal.below(k), 1e-12);
    double legal = sd * sd * Math.max(0, 1 - h * (h + k));
    return new AttemptLaw.AsInAim(mean, sd, Math.sqrt(Math.max(jumpSd_m * jumpSd_m - legal, LEAST_EFFECTIVE * LEAST_EFFECTIVE * jumpSd_m * jumpSd_m)));
  }

  /** Kept triple-jump meets with the athlete on their list, with the attempts that are sure; then those told of other days. */
  private List<MeetAhead> ahead(Athlete athlete, LocalDate by, List<MeetAhead> told, LocalDate today) {
    List<MeetAhead> out = new ArrayList<>();
    for (MeetSheet sheet : meets.withAthlete(athlete.id(), today.plusDays(1))) {
      if (sheet.event() == Event.TRIPLE_JUMP && !sheet.date().isAfter(by)) {
        int sure = sheet.entrants().size() > sheet.rules().finalists() ? sheet.rules().firstRounds() : sheet.rules().rounds();
        out.add(new MeetAhead(sheet.name(), sheet.date(), sure));
      }
    }
    for (MeetAhead m : told) {
      if (!m.date().isAfter(today) || m.date().isAfter(by)) {
        throw new RefusedException("A meet on " + m.date() + " is not between tomorrow and " + by + ". Name days in between, or another last day.");
      }
      if (out.stream().noneMatch(o -> o.date().equals(m.date()))) {
        out.add(m);
      }
    }
    out.sort(Comparator.comparing(MeetAhead::date));
    return out;
  }
}
