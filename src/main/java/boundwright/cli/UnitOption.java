package boundwright.cli;

import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** In which unit lengths are read and told: what the commands with lengths share. */
final class UnitOption {
  @Option(names = "--unit", paramLabel = "UNIT", description = "m, or ft for feet and inches. Default: the settings.")
  private @Nullable String unit;

  /** The unit that was asked for, or else that of the settings in the store. */
  LengthUnit in(Workbench bench) {
    return in(bench.settings().settings());
  }

  /** The unit that was asked for, or else that of these settings. */
  LengthUnit in(CoachSettings settings) {
    return DataOptions.unit(unit, settings);
  }
}
