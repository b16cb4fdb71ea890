package easewright.english;

import easewright.number.WordLists;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.LowerCaseFilter;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.charfilter.MappingCharFilter;
import org.apache.lucene.analysis.charfilter.NormalizeCharMap;
import org.apache.lucene.analysis.en.EnglishPossessiveFilter;
import org.apache.lucene.analysis.miscellaneous.ASCIIFoldingFilter;
import org.apache.lucene.analysis.pattern.PatternReplaceFilter;
import org.apache.lucene.analysis.standard.StandardTokenizer;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.tartarus.snowball.ext.EnglishStemmer;

/** Splits English text into words: Unicode word breaks (UAX 29), Porter's second stemmer. */
public final class Speech {
  private static final NormalizeCharMap SIGNS = signs();
  private static final Pattern DRAWN_OUT = Pattern.compile("(\\p{L})\\1{2,}");

  private final Map<String, String> kept;
  private final Analyzer analyzer =
      new Analyzer() {
        @Override
        protected TokenStreamComponents createComponents(String field) {
          Tokenizer words = new StandardTokenizer();
          TokenStream plain = new ASCIIFoldingFilter(new LowerCaseFilter(words));
          plain = new PatternReplaceFilter(plain, DRAWN_OUT, "$1$1", true);
          return new TokenStreamComponents(words, new EnglishPossessiveFilter(plain));
        }

        @Override
        protected Reader initReader(String field, Reader reader) {
          return new MappingCharFilter(SIGNS, reader);
        }
      };

  /** Splits with the kept endings of these lists. */
  public Speech(WordLists lists) {
    this.kept = lists.pairs("kept endings");
  }

  /** The words of a text, in order. */
  public List<Word> words(String text) {
    List<Word> words = new ArrayList<>();
    EnglishStemmer stemmer = new EnglishStemmer();
    try (TokenStream stream = analyzer.tokenStream("text", text)) {
      CharTermAttribute term = stream.addAttribute(CharTermAttribute.class);
      OffsetAttribute offset = stream.addAttribute(OffsetAttribute.class);
      stream.reset();
      while (stream.incrementToken()) {
        String plain = term.toString();
        words.add(new Word(offset.startOffset(), offset.endOffset(), plain, stem(stemmer, plain)));
      }
      stream.end();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // the text is already here
    }
    return words;
  }

  /** The stem of one word already in lower case. */
  public String stem(String plain) {
    return stem(new EnglishStemmer(), plain);
  }

  private String stem(EnglishStemmer stemmer, String plain) {
    String own = kept.get(plain);
    if (own != null) {
      return own;
    }
    stemmer.setCurrent(plain);
    stemmer.stem();
    return stemmer.getCurrent();
  }

  private static NormalizeCharMap signs() {
    NormalizeCharMap.Builder map = new NormalizeCharMap.Builder();
    map.add("\u2018", "'");
    map.add("\u2019", "'");
    map.add("\u00b4", "'");
    map.add("`", "'");
    return map.build();
  }
}
