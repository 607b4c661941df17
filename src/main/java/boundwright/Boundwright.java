package boundwright;
final class Boundwright { private Boundwright() {} public static void main(String[] a) {} }
