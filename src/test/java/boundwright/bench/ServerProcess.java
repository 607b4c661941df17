package boundwright.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program serving a folder, as a process of its own with this one's class path. Other options of its JVM: {@code -Dserver.options}. */
record ServerProcess(Process process, BufferedReader said, String url) implements AutoCloseable {
  private static final Pattern URL = Pattern.compile("http://[0-9.]+:\\d+");

  /** As the launcher starts it. */
  private static final String LAUNCHER =
      "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC"
          + (System.getProperty("os.name", "").startsWith("Linux") ? " -XX:+UseTransparentHugePages -Xlog:pagesize=off" : "");

  static ServerProcess start(Path folder) throws IOException {
    return start(folder, Map.of());
  }

  /** As {@link #start(Path)}, with more in its environment. */
  static ServerProcess start(Path folder, Map<String, String> environment) throws IOException {
    List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
    String options = System.getProperty("server.options", LAUNCHER);
    if (!options.isBlank()) {
      command.addAll(List.of(options.split(" ")));
    }
    command.addAll(
        List.of("-cp", System.getProperty("java.class.path"), "boundwright.Boundwright", "serve", "--port", "0", "--data", folder.toString()));
    ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
    builder.environment().putAll(environment);
    Process process = builder.start();
    BufferedReader said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      Matcher m = URL.matcher(line);
      if (m.find()) {
        return new ServerProcess(process, said, m.group());
      }
    }
    throw new IOException("the server did not start");
  }

  @Override
  public void close() {
    process.destroy();
    try {
      process.waitFor();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
