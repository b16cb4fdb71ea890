package easewright.rulebook;

import java.util.Map;

/** Classes compiled in memory. */
final class RuleClasses extends ClassLoader {
  private final Map<String, byte[]> classes;

  RuleClasses(Map<String, byte[]> classes) {
    super(RuleBook.class.getClassLoader());
    this.classes = classes;
  }

  /** Looks here before the application, whose compiled book has classes of the same names. */
  @Override
  protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
    if (!classes.containsKey(name)) {
      return super.loadClass(name, resolve);
    }
    synchronized (getClassLoadingLock(name)) {
      Class<?> loaded = findLoadedClass(name);
      return loaded != null ? loaded : findClass(name);
    }
  }

  @Override
  protected Class<?> findClass(String name) throws ClassNotFoundException {
    byte[] bytes = classes.get(name);
    if (bytes == null) {
      throw new ClassNotFoundException(name);
    }
    return defineClass(name, bytes, 0, bytes.length);
  }
}
