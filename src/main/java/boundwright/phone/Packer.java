package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.flight.Logbook;
import boundwright.flight.RepStore;
import boundwright.load.CareRepository;
import boundwright.load.LoadRepository;
import boundwright.load.WorkLog;
import boundwright.runway.Rungs;
import boundwright.runway.SettingsRepository;
import java.time.Clock;
import java.util.List;
import java.util.function.LongFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Packs what a phone carries, on the server. */
public final class Packer {
  private final Clock clock;

  /**
   * Reads from these.
   *
   * @param tokens the token with which a rep was tapped, by its number; null where it has none
   */
  @SuppressWarnings("unused")
  public Packer(
      AthleteRepository athletes,
      RepStore reps,
      Logbook logbook,
      SettingsRepository settings,
      WorkLog work,
      LoadRepository load,
      CareRepository care,
      Supplier<Rungs> rungs,
      LongFunction<@Nullable String> tokens,
      Clock clock) {
    this.clock = clock;
  }

  /** The whole day for these athletes, in this order. */
  public Parcel pack(List<Athlete> squad) {
    throw new UnsupportedOperationException("not yet " + clock + squad);
  }

  /** What is known of one athlete now. */
  public Parcel.Part part(Athlete athlete) {
    throw new UnsupportedOperationException("not yet " + athlete);
  }
}
