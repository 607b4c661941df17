package boundwright.web.certificate;

import boundwright.quantity.RefusedException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Base64;
import java.util.Optional;
import java.util.Set;

/**
 * The folder of the keys, for its owner alone: folder 0700, files 0600. A key that others can read is refused, because whoever has
 * the authority's key can pass for this machine before every phone that trusts it.
 */
final class KeyFolder {
  private static final boolean POSIX = FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
  private static final Set<PosixFilePermission> OWN_FILE = PosixFilePermissions.fromString("rw-------");
  private static final Set<PosixFilePermission> OWN_FOLDER = PosixFilePermissions.fromString("rwx------");

  private final Path folder;

  KeyFolder(Path folder) {
    this.folder = folder;
  }

  /** A key and the certificate of it. */
  record Pair(PrivateKey key, X509Certificate certificate) {}

  /** Where it is. */
  Path path() {
    return folder;
  }

  /** Makes the folder if it is missing, and refuses one that others can look into. */
  void make() {
    try {
      if (!Files.isDirectory(folder)) {
        Files.createDirectories(folder.toAbsolutePath().getParent());
        Files.createDirectory(folder, POSIX ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWN_FOLDER)} : new FileAttribute<?>[0]);
        ownerOnly(folder, OWN_FOLDER);
      }
      refuseOpen(folder, OWN_FOLDER, "700");
    } catch (IOException e) {
      throw new RefusedException("The folder " + folder + " for the certificate cannot be used: " + e.getMessage() + ". Give a data folder that you may write to with --data.", e);
    }
  }

  /** The key and certificate called so; empty if neither is there. */
  Optional<Pair> read(String name) {
    Path key = folder.resolve(name + ".key");
    Path certificate = folder.resolve(name + ".crt");
    if (!Files.exists(key) && !Files.exists(certificate)) {
      return Optional.empty();
    }
    try {
      refuseOpen(key, OWN_FILE, "600");
      Pair pair = new Pair(key(Files.readString(key, StandardCharsets.US_ASCII)), certificate(Files.readAllBytes(certificate)));
      refuseStrangers(pair);
      return Optional.of(pair);
    } catch (IOException | GeneralSecurityException | IllegalArgumentException e) {
      throw damaged(key + " and " + certificate.getFileName(), e);
    }
  }

  /** The certificate called so, of which no key is kept. */
  X509Certificate readAlone(String name) {
    Path file = folder.resolve(name + ".crt");
    try {
      return certificate(Files.readAllBytes(file));
    } catch (IOException | GeneralSecurityException e) {
      throw damaged(file.toString(), e);
    }
  }

  private RefusedException damaged(String files, Exception e) {
    return new RefusedException(
        "The certificate files " + files + " are damaged or do not belong together, so https was not opened."
            + " Put them back from a backup, or remove the folder " + folder + ": a new certificate is made then, and each phone must trust it anew.",
        e);
  }

  private static void refuseStrangers(Pair pair) throws GeneralSecurityException {
    byte[] said = "boundwright".getBytes(StandardCharsets.US_ASCII);
    Signature signing = Signature.getInstance("SHA256withECDSA");
    signing.initSign(pair.key());
    signing.update(said);
    byte[] signed = signing.sign();
    // the bare key: an authority may not sign texts, and its certificate says so
    signing.initVerify(pair.certificate().getPublicKey());
    signing.update(said);
    if (!signing.verify(signed)) {
      throw new GeneralSecurityException("the key is not that of the certificate");
    }
  }

  private static PrivateKey key(String pem) throws GeneralSecurityException {
    byte[] der = Base64.getMimeDecoder().decode(pem.replaceAll("-----[A-Z ]+-----", ""));
    return KeyFactory.getInstance("EC").generatePrivate(new PKCS8EncodedKeySpec(der));
  }

  private static X509Certificate certificate(byte[] pem) throws GeneralSecurityException {
    return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(pem));
  }

  /** Keeps both; each file is whole or not there. */
  void write(String name, Pair pair) {
    try {
      write(folder.resolve(name + ".key"), pem("PRIVATE KEY", pair.key().getEncoded()));
      write(folder.resolve(name + ".crt"), pem("CERTIFICATE", pair.certificate().getEncoded()));
    } catch (IOException | GeneralSecurityException e) {
      throw unkept(e);
    }
  }

  /** Keeps a certificate without its key. */
  void writeAlone(String name, X509Certificate certificate) {
    try {
      write(folder.resolve(name + ".crt"), pem("CERTIFICATE", certificate.getEncoded()));
    } catch (IOException | GeneralSecurityException e) {
      throw unkept(e);
    }
  }

  private RefusedException unkept(Exception e) {
    return new RefusedException("The certificate could not be kept in " + folder + ": " + e.getMessage() + ". Free some space, or give another folder with --data.", e);
  }

  private static String pem(String what, byte[] der) {
    return "-----BEGIN " + what + "-----\n" + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(der) + "\n-----END " + what + "-----\n";
  }

  /** The file is its owner's from the first byte on. */
  private static void write(Path file, String text) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    Files.deleteIfExists(fresh);
    FileAttribute<?>[] own = POSIX ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWN_FILE)} : new FileAttribute<?>[0];
    try (SeekableByteChannel out = Files.newByteChannel(fresh, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), own)) {
      ownerOnly(fresh, OWN_FILE);
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.US_ASCII));
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
    }
    Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }

  private static void ownerOnly(Path path, Set<PosixFilePermission> own) throws IOException {
    if (POSIX) {
      Files.setPosixFilePermissions(path, own);
    }
    // other systems keep a user's own folders from other users by themselves, and the data folder lies in one
  }

  private static void refuseOpen(Path path, Set<PosixFilePermission> own, String mode) throws IOException {
    if (POSIX && !own.containsAll(Files.getPosixFilePermissions(path))) {
      throw new RefusedException(
          "Others on this machine can read " + path + " (" + PosixFilePermissions.toString(Files.getPosixFilePermissions(path))
              + "), so https was not opened: with this key they could pass for this laptop. Shut it with chmod " + mode + " " + path
              + "; if somebody may have read it, remove the folder and let each phone trust the new certificate.");
    }
  }
}
