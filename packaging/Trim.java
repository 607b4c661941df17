import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * Copies jars without what this machine's platform never loads: the database's libraries for other platforms, and of the film library the
 * programs, the filters and the devices, which boundwright does not call.
 * Run: java packaging/Trim.java FROM TO
 */
final class Trim {
  private static final Pattern UNUSED =
      Pattern.compile("org/bytedeco/ffmpeg/[^/]+/((lib)?(jni)?av(filter|device)[-.].*|(lib)?jniav(filter|device).*|ff(mpeg|probe)(\\.exe)?)|META-INF/native-image/.*");
  private static final Pattern NATIVE = Pattern.compile("org/sqlite/native/.+");

  private Trim() {}

  public static void main(String[] args) throws IOException {
    Path to = Path.of(args[1]);
    Files.createDirectories(to);
    try (DirectoryStream<Path> all = Files.newDirectoryStream(Path.of(args[0]), "*.jar")) {
      for (Path jar : all) {
        copy(jar, to.resolve(jar.getFileName()));
      }
    }
  }

  private static void copy(Path jar, Path to) throws IOException {
    if (isUsedWhole(jar)) {
      Files.copy(jar, to);
      return;
    }
    try (ZipInputStream in = new ZipInputStream(Files.newInputStream(jar)); ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(to))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        if (!isUnused(e.getName())) {
          ZipEntry same = new ZipEntry(e.getName());
          same.setTime(e.getTime());
          out.putNextEntry(same);
          in.transferTo(out);
        }
      }
    }
  }

  private static boolean isUnused(String name) {
    return UNUSED.matcher(name).matches() || (NATIVE.matcher(name).matches() && !name.startsWith("org/sqlite/native/" + platform()));
  }

  /** As the database's library names its folders. */
  private static String platform() {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    String arch = System.getProperty("os.arch").equals("aarch64") ? "aarch64" : "x86_64";
    return (system.startsWith("windows") ? "Windows/" : system.startsWith("mac") ? "Mac/" : "Linux/") + arch;
  }

  private static boolean isUsedWhole(Path jar) throws IOException {
    try (ZipFile zip = new ZipFile(jar.toFile())) {
      return zip.stream().noneMatch(e -> isUnused(e.getName()));
    }
  }
}
