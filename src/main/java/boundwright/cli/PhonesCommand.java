package boundwright.cli;

import boundwright.pairing.Phone;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The phones that are let in, and shutting them out; also while the pages are open. */
@Command(
    name = "phones",
    description = {
      "Lists the phones that were let in, or shuts one or all of them out; it holds at once, also while serve runs.",
      "Example: boundwright phones --revoke 2%n"
    })
final class PhonesCommand implements Callable<Integer> {
  private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ENGLISH);

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--revoke", paramLabel = "N", description = "Shuts the phone with this number out.")
  private @Nullable Long revoke;

  @Option(names = "--revoke-all", description = "Shuts all phones out, and ends the codes that wait for one.")
  private boolean revokeAll;

  PhonesCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /**
   * The answer in JSON.
   *
   * @param phones those that are let in now
   * @param revoked how many were shut out just now
   */
  record PhonesAnswer(List<PhoneLine> phones, int revoked) {}

  /**
   * A phone in JSON.
   *
   * @param id its number
   * @param name what it is called
   * @param rights {@code LOG} or {@code ALL}
   * @param https whether it was paired over https
   * @param since when, as 2026-05-14T10:00:00Z
   * @param lastSeen when it last asked for something, to five minutes
   */
  record PhoneLine(long id, String name, String rights, boolean https, String since, String lastSeen) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      if (revoke != null && revokeAll) {
        throw new RefusedException("Shut one phone out with --revoke, or all with --revoke-all, not both at once. Nothing was changed.");
      }
      int revoked = 0;
      if (revokeAll) {
        revoked = bench.phones().revokeAll();
      } else if (revoke != null) {
        if (!bench.phones().revoke(revoke)) {
          throw new RefusedException("No phone has the number " + revoke + ". Nothing was changed. boundwright phones lists them.");
        }
        revoked = 1;
      }
      List<Phone> all = bench.phones().all();
      if (top.json()) {
        Json.print(s.out(), new PhonesAnswer(all.stream().map(PhonesCommand::line).toList(), revoked));
      } else {
        print(s, all, revoked);
      }
      return 0;
    }
  }

  private static PhoneLine line(Phone p) {
    return new PhoneLine(p.id(), p.name(), p.rights().name(), p.sealed(), p.since().toString(), p.lastSeen().toString());
  }

  private static void print(Surroundings s, List<Phone> all, int revoked) {
    PrintWriter out = s.out();
    if (revoked > 0) {
      out.println(revoked == 1 ? "1 phone is shut out." : revoked + " phones are shut out.");
    }
    if (all.isEmpty()) {
      out.println("No phone is let in. Codes come from boundwright serve --host all.");
    }
    for (Phone p : all) {
      out.printf(
          Locale.ENGLISH, "%3d  %s, %s, since %s, last seen %s, over %s%n", p.id(), p.name(), p.rights().label(),
          WHEN.format(p.since().atZone(s.clock().getZone())), WHEN.format(p.lastSeen().atZone(s.clock().getZone())), p.sealed() ? "https" : "http");
    }
  }
}
