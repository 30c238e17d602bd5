/** The part of Eleventy's programming interface that the site uses; the package brings no types. */
declare module "@11ty/eleventy" {
  /** Eleventy's data of one page. */
  interface PageData {
    readonly guide: import("../guide/guide-schema.ts").Guide;
    readonly page: { readonly inputPath: string; readonly url: string };
    readonly pagination?: unknown;
    readonly title?: unknown;
    readonly description?: unknown;
    readonly content?: unknown;
    readonly [key: string]: unknown;
  }
  type Rendering = string | undefined | Promise<string | undefined>;

  interface Extension {
    readonly read?: boolean;
    readonly useJavaScriptImport?: boolean;
    readonly getInstanceFromInputPath?: (inputPath: string) => Promise<unknown>;
    readonly getData?: (inputPath: string) => Promise<object>;
    readonly compile: (
      this: {
        readonly config: { readonly javascriptFunctions: Readonly<Record<string, RenderFile>> };
        readonly defaultRenderer: (data: PageData) => Rendering;
      },
      text: string,
      inputPath: string,
    ) => (data: PageData) => Rendering;
  }
  /** The shortcode of the render plugin. */
  type RenderFile = (this: Pick<PageData, "page">, file: string, data: object) => Promise<string>;

  interface VirtualTemplate {
    readonly data?: () => { readonly permalink: string };
    readonly render: (this: { readonly renderFile?: RenderFile }, data: PageData) => string | Promise<string>;
  }

  export interface UserConfig {
    readonly ignores: Set<string>;
    addExtension(extension: string, options: Extension): void;
    addFilter(name: string, filter: (this: Pick<PageData, "page">, value: string) => string): void;
    addGlobalData(key: string, value: unknown): void;
    addLayoutAlias(alias: string, file: string): void;
    addPlugin(plugin: unknown): void;
    addPreprocessor(name: string, extensions: string, process: (data: PageData) => false | undefined): void;
    addTemplate(virtualPath: string, template: VirtualTemplate): void;
    setDataFileSuffixes(suffixes: readonly string[]): void;
    setIncludesDirectory(dir: string): void;
    setLayoutsDirectory(dir: string): void;
    setLiquidOptions(options: object): void;
    setTemplateFormats(formats: readonly string[]): void;
    setUseGitIgnore(use: boolean): void;
  }

  interface Options {
    readonly configPath: false;
    readonly quietMode: boolean;
    readonly config: (config: UserConfig) => void | Promise<void>;
  }

  /** A page that was written. */
  interface Written {
    readonly inputPath: string;
    readonly outputPath: string;
  }

  export default class Eleventy {
    constructor(inputDir: string, outputDir: string, options: Options);
    disableLogger(): void;
    write(): Promise<readonly [unknown, readonly Written[]]>;
  }
  export const RenderPlugin: unknown;
}
