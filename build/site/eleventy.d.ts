/** The part of Eleventy's programming interface that the site uses; the package brings no types. */
declare module "@11ty/eleventy" {
  interface Template {
    readonly data: () => { readonly permalink: string };
    readonly render: () => string;
  }

  export interface UserConfig {
    addTemplate(virtualPath: string, template: Template): void;
    setTemplateFormats(formats: readonly string[]): void;
    setDataFileSuffixes(suffixes: readonly string[]): void;
  }

  interface Options {
    readonly configPath: false;
    readonly quietMode: boolean;
    readonly config: (config: UserConfig) => void;
  }

  export default class Eleventy {
    constructor(inputDir: string, outputDir: string, options: Options);
    disableLogger(): void;
    write(): Promise<unknown>;
  }
}
