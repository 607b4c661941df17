package boundwright.fuzz;

import static org.junit.platform.engine.discovery.DiscoverySelectors.selectMethod;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;
import org.junit.platform.launcher.listeners.SummaryGeneratingListener;

/** Drives one fuzz target by coverage. Run: bench/fuzz. Arguments: class, method with its parameter types, seconds; JAZZER_FUZZ must be 1. */
public final class FuzzRun {
  private FuzzRun() {}

  public static void main(String[] args) {
    LauncherDiscoveryRequest request =
        LauncherDiscoveryRequestBuilder.request()
            .selectors(selectMethod(args[0] + "#" + args[1]))
            .configurationParameter("jazzer.hooks", "true")
            .configurationParameter("jazzer.internal.arg.0", "boundwright")
            .configurationParameter("jazzer.internal.arg.1", "-max_total_time=" + args[2])
            .build();
    SummaryGeneratingListener said = new SummaryGeneratingListener();
    LauncherFactory.create().execute(request, said);
    said.getSummary().printFailuresTo(new PrintWriter(System.out, true, StandardCharsets.UTF_8), 12);
    System.exit(said.getSummary().getTotalFailureCount() == 0 && said.getSummary().getTestsStartedCount() > 0 ? 0 : 1);
  }
}
