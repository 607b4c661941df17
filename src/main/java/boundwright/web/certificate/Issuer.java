package boundwright.web.certificate;

import java.math.BigInteger;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import javax.security.auth.x500.X500Principal;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.GeneralSubtree;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.asn1.x509.NameConstraints;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/**
 * Writes certificates (RFC 5280). The one class that knows the library for them; it is loaded only when one is to be written. Keys are
 * of the curve P-256, which phones and the Java library know.
 */
final class Issuer {
  private static final String SIGNATURE = "SHA256withECDSA";

  private final SecureRandom random = new SecureRandom();

  /**
   * What phones trust, and the authority below it that signs leaves. Both can vouch for these names and addresses and for nothing else.
   *
   * @param root its key was thrown away when it had signed the authority
   * @param authority signs leaves
   */
  record Trusted(X509Certificate root, KeyFolder.Pair authority) {}

  /**
   * A new authority. Readers may pass over the constraints of a certificate that they trust (RFC 5280, 6.1 takes an anchor as a name and a
   * key; the Java library does so), but none passes over those of one below it. So phones trust a root whose key no longer exists, and the
   * key that is kept cannot pass for a bank, whoever steals it. A permitted DNS name also permits names below it (4.2.1.10); nothing
   * narrower exists.
   */
  Trusted authority(List<String> names, List<String> addresses, Instant from, Instant until) {
    try {
      KeyPair rootKeys = keys();
      X500Name subject = new X500Name("CN=boundwright on this laptop");
      X509v3CertificateBuilder top =
          new JcaX509v3CertificateBuilder(subject, serial(), Date.from(from), Date.from(until), subject, rootKeys.getPublic());
      X509Certificate root = signed(vouching(top, rootKeys, 1, names, addresses), rootKeys, rootKeys).certificate();
      KeyPair keys = keys();
      X509v3CertificateBuilder below =
          new JcaX509v3CertificateBuilder(
              subject, serial(), Date.from(from), Date.from(until), new X500Name("CN=boundwright signing on this laptop"), keys.getPublic());
      below.addExtension(Extension.authorityKeyIdentifier, false, new JcaX509ExtensionUtils().createAuthorityKeyIdentifier(root));
      return new Trusted(root, signed(vouching(below, keys, 0, names, addresses), keys, rootKeys));
    } catch (CertIOException | GeneralSecurityException | OperatorCreationException | UnknownHostException e) {
      throw new IllegalStateException(e);
    }
  }

  private static X509v3CertificateBuilder vouching(
      X509v3CertificateBuilder builder, KeyPair keys, int below, List<String> names, List<String> addresses)
      throws CertIOException, GeneralSecurityException, UnknownHostException {
    builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(below));
    builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.keyCertSign));
    builder.addExtension(Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
    builder.addExtension(Extension.subjectKeyIdentifier, false, new JcaX509ExtensionUtils().createSubjectKeyIdentifier(keys.getPublic()));
    builder.addExtension(Extension.nameConstraints, true, constraints(names, addresses));
    return builder;
  }

  /** A leaf for serving, signed by this authority. Its subject is one of the names: some readers hold the subject against the constraints too. */
  KeyFolder.Pair leaf(KeyFolder.Pair authority, List<String> names, List<String> addresses, Instant from, Instant until) {
    try {
      KeyPair keys = keys();
      X509v3CertificateBuilder builder =
          new JcaX509v3CertificateBuilder(
              authority.certificate(), serial(), Date.from(from), Date.from(until), new X500Principal("CN=" + names.get(0)), keys.getPublic());
      builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
      builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
      builder.addExtension(Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
      builder.addExtension(
          Extension.authorityKeyIdentifier, false, new JcaX509ExtensionUtils().createAuthorityKeyIdentifier(authority.certificate()));
      List<GeneralName> all = new ArrayList<>();
      names.forEach(n -> all.add(new GeneralName(GeneralName.dNSName, n)));
      addresses.forEach(a -> all.add(new GeneralName(GeneralName.iPAddress, a)));
      builder.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(all.toArray(GeneralName[]::new)));
      return signed(builder, keys, new KeyPair(authority.certificate().getPublicKey(), authority.key()));
    } catch (CertIOException | GeneralSecurityException | OperatorCreationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Where no address is permitted all are shut off; a name there always is. What a constraint does not speak of, it permits. */
  private static NameConstraints constraints(List<String> names, List<String> addresses) throws UnknownHostException {
    List<GeneralSubtree> permitted = new ArrayList<>();
    for (String name : names) {
      permitted.add(new GeneralSubtree(new GeneralName(GeneralName.dNSName, name)));
    }
    for (String address : addresses) {
      byte[] bytes = InetAddress.getByName(address).getAddress();
      byte[] range = Arrays.copyOf(bytes, bytes.length * 2);
      Arrays.fill(range, bytes.length, range.length, (byte) 0xff);
      permitted.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, new DEROctetString(range))));
    }
    List<GeneralSubtree> excluded = new ArrayList<>();
    if (addresses.isEmpty()) {
      excluded.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, new DEROctetString(new byte[8]))));
      excluded.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, new DEROctetString(new byte[32]))));
    }
    return new NameConstraints(
        permitted.toArray(GeneralSubtree[]::new), excluded.isEmpty() ? null : excluded.toArray(GeneralSubtree[]::new));
  }

  private KeyPair keys() throws GeneralSecurityException {
    KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
    generator.initialize(new ECGenParameterSpec("secp256r1"), random);
    return generator.generateKeyPair();
  }

  private BigInteger serial() {
    return new BigInteger(120, random).setBit(120);
  }

  private static KeyFolder.Pair signed(X509v3CertificateBuilder builder, KeyPair of, KeyPair by)
      throws OperatorCreationException, GeneralSecurityException {
    X509Certificate certificate =
        new JcaX509CertificateConverter().getCertificate(builder.build(new JcaContentSignerBuilder(SIGNATURE).build(by.getPrivate())));
    return new KeyFolder.Pair(of.getPrivate(), certificate);
  }
}
